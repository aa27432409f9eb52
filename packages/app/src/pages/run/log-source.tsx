import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { useBenchState } from '../../job/state/index.ts';
import { isUnsaved } from '../../sheet/keep/index.ts';
import { ChooseFile } from '../../ui/take-in/index.ts';
import { LoggerOffers } from './logger-offers.tsx';
import { useKept, useKeptRuns, useRun, useRunDesk } from './run-context.ts';
import type { OpenedLog, RunState } from './run-state.ts';
import { UnreadColumns } from './unread-columns.tsx';

/** Where the log comes from: a file dropped or chosen, or a rehearsal; and how far its review is. */
export function LogSource(): VNode {
  const desk = useRunDesk();
  const log = useRun((state) => state.log);
  const run = useRun((state) => state.run);
  const planned = useBenchState((state) => state.planned?.answer.plan !== undefined);
  const [over, setOver] = useState(false);
  const take = (chosen: File | undefined): void => {
    if (chosen !== undefined)
      desk.open({ name: chosen.name, source: { is: 'file', file: chosen }, logger: log?.logger });
  };
  const seed = log?.source.is === 'rehearsal' ? log.source.seed + 1 : 1;
  return (
    <section
      class={`panel log-source${over ? ' over' : ''}`}
      aria-labelledby="log-source-title"
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        take(event.dataTransfer?.files[0]);
      }}
    >
      <header class="panel-head">
        <h2 id="log-source-title">Log of the run</h2>
        <p class="caption">Drop the file here as the logger wrote it: it stays on this computer.</p>
      </header>
      <div class="log-source-row">
        <ChooseFile label="Open log" name="Log to open" onFile={take} />
        <button type="button" disabled={!planned} onClick={() => desk.rehearse(seed)}>
          Play a rehearsal
        </button>
        <KeepButton />
        <p class={`status status-${run.is}`} role="status" aria-label="Review">
          {statusWords(log, run, planned)}
        </p>
      </div>
      <LoggerOffers />
      {run.is === 'unread' && log?.live !== true && run.columns.length > 0 ? (
        <UnreadColumns columns={run.columns} />
      ) : null}
    </section>
  );
}

/** Keeps the log that is open as a run of the job. */
function KeepButton(): VNode | null {
  const kept = useKeptRuns();
  const doing = useKept((state) => state.doing);
  const log = useRun((state) => state.log);
  const reviewed = useRun((state) => state.run.is === 'done');
  const saved = useBenchState((state) => state.saved !== undefined);
  const unsaved = useBenchState(isUnsaved);
  if (log === undefined || log.live === true) return null;
  if (log.kept !== undefined) return <p class="caption">Kept as a run of this job.</p>;
  const wanting =
    !saved || unsaved ? 'Save the job first: a run is kept with the revision that was run.' : '';
  return (
    <>
      <button
        type="button"
        disabled={wanting !== '' || !reviewed || doing !== undefined}
        aria-describedby={wanting === '' ? undefined : 'keep-wanting'}
        onClick={() => void kept.keep()}
      >
        Keep this run
      </button>
      {wanting === '' ? null : (
        <p class="caption" id="keep-wanting">
          {wanting}
        </p>
      )}
    </>
  );
}

function statusWords(log: OpenedLog | undefined, run: RunState['run'], planned: boolean): string {
  const name = log?.name;
  if (log?.live === true && run.is === 'unread') return `${name}: too little has come in to be reviewed yet.`;
  if (log?.live === true && run.is !== 'failed') return `${name}: live`;
  if (!planned && name === undefined) return 'A log is held against the plan; this job has none yet.';
  switch (run.is) {
    case 'waiting':
      return 'No log is open.';
    case 'running':
      return `${name}: reviewing, ${Math.round(100 * run.share)} %`;
    case 'done':
      return `${name}: reviewed`;
    case 'unread':
      return `${name} cannot be read. ${run.why.join(' ')}`;
    case 'failed':
      return `The review failed: ${run.why}`;
  }
}
