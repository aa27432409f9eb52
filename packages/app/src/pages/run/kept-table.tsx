import type { SavedRun } from '@furrow/contract';
import { formatAmount, sentenceText, type UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { runFilePath } from '../../api/index.ts';
import { useBenchState } from '../../job/state/index.ts';
import { EraseDialog } from '../../ui/dialog/index.ts';
import { ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { useKept, useKeptRuns, useRun } from './run-context.ts';

const WHEN = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

/** The runs of the job that are kept, newest first, with what was found of each. */
export function KeptTable(): VNode | null {
  const runs = useKept((state) => state.runs);
  const trouble = useKept((state) => state.trouble);
  const doing = useKept((state) => state.doing);
  const saved = useBenchState((state) => state.saved !== undefined);
  const [erasing, setErasing] = useState<SavedRun>();
  const kept = useKeptRuns();
  if (!saved) return null;
  const lead = (
    <>
      {runs?.length === 0 ? <p class="panel-lead">No run of this job is kept yet.</p> : null}
      <p role="status" aria-label="Runs" class={trouble === undefined ? 'caption' : 'status-unread'}>
        {trouble ?? doing ?? ''}
      </p>
    </>
  );
  return (
    <>
      <ScrollTable
        id="kept-runs"
        title="Runs of this job"
        note="Each file is kept as the logger wrote it; the newest stands first."
        lead={lead}
      >
        {runs === undefined || runs.length === 0 ? null : (
          <>
            <thead>
              <tr>
                <th scope="col">Run</th>
                <th scope="col">Begun</th>
                <th scope="col">Revision</th>
                <th scope="col">What was found</th>
                <th scope="col">Under the strip</th>
                <th scope="col">File</th>
                <th scope="col">Erase</th>
              </tr>
            </thead>
            <tbody>
              {runs.map((run) => (
                <KeptRow key={run.id} run={run} onErase={() => setErasing(run)} />
              ))}
            </tbody>
          </>
        )}
      </ScrollTable>
      {erasing === undefined ? null : (
        <EraseDialog
          what={`The run ${erasing.name} would be gone, with its file and all that was found in it.`}
          onClose={() => setErasing(undefined)}
          onErase={() => {
            setErasing(undefined);
            void kept.erase(erasing);
          }}
        />
      )}
    </>
  );
}

function KeptRow({ run, onErase }: { readonly run: SavedRun; readonly onErase: () => void }): VNode {
  const kept = useKeptRuns();
  const units = useUnits();
  const open = useRun((state) => state.log?.kept === run.id);
  const beside = useKept((state) => state.beside.includes(run.id));
  return (
    <tr>
      <th scope="row" class="words">
        {run.live ? (
          run.name
        ) : (
          <button type="button" class="plain" aria-pressed={open} onClick={() => void kept.open(run)}>
            {run.name}
          </button>
        )}
        {run.rehearsal ? <p class="run-mark">Rehearsal: no rig was run</p> : null}
      </th>
      <td>{WHEN.format(new Date(run.begun_at))}</td>
      <td>{run.revision_number}</td>
      <td class="words">{run.live ? 'Live: readings still come in.' : foundWords(run, units)}</td>
      <td>
        <input
          type="checkbox"
          aria-label={`Passes of ${run.name} under the strip`}
          checked={beside}
          disabled={open || run.review?.summary == null}
          onChange={(event) => kept.showBeside(run, event.currentTarget.checked)}
        />
      </td>
      <td>
        {run.live ? null : (
          <>
            <a href={runFilePath(run.id, 'runOriginal')} download>
              as written
            </a>{' '}
            {run.review?.summary == null ? null : (
              <a href={runFilePath(run.id, 'runParquet')} download>
                Parquet
              </a>
            )}
          </>
        )}
      </td>
      <td>
        <button type="button" aria-label={`Erase ${run.name}`} onClick={onErase}>
          Erase
        </button>
      </td>
    </tr>
  );
}

/** What was found of a run, in a line. */
function foundWords({ review }: SavedRun, units: UnitSystem): string {
  if (review === null) return 'being reviewed';
  const { summary, trouble, program_version: version } = review;
  if (summary === null) return trouble ?? `reviewed by version ${version}`;
  const { totals, passes, events } = summary;
  const bad = events.filter(({ kind }) => kind !== 'touch_down' && kind !== 'electrode_change').length;
  const parts = [
    passes.length === 1 ? 'one pass' : `${passes.length} passes`,
    ...(totals.arc_time_s === null ? [] : [`arc ${formatAmount(totals.arc_time_s, 'time', units)}`]),
    bad === 0 ? 'no event' : bad === 1 ? 'one event' : `${bad} events`,
  ];
  const first = summary.verdict
    .map((each) => sentenceText(each, units))
    .find((each) => /seems to be/u.test(each));
  return [...(first === undefined ? [] : [first]), `${parts.join(', ')} (version ${version})`].join(' ');
}
