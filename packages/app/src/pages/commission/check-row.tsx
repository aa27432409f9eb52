import type { Issue } from '@furrow/engine';
import { checkBand, checkReading } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { Said } from '../../ui/theme/index.ts';
import { judgeTyped, typedValue } from './judge-typed.ts';
import { ReadingEntry } from './reading-entry.tsx';
import { ReadingVerdict } from './reading-verdict.tsx';
import { type CheckRowFacts, useReading, useRig, useRigState } from './rig-context.ts';
import type { NextBesideReading } from './rig-faults.tsx';

interface CheckRowProps extends CheckRowFacts {
  /** The caution told once for the whole stage. */
  readonly told: string | null;
  readonly next: NextBesideReading | undefined;
}

/** One check: what to do, what to expect, what was read and what it means. */
export function CheckRow({ check, system, changedAt, told, next }: CheckRowProps): VNode {
  const { id, title, ask, why, caution } = check;
  const reading = useReading(id);
  const typed = judgeTyped(check, reading.text);
  return (
    <li class="check" id={`check-${id}`}>
      <h4>{title}</h4>
      <div class="check-words">
        <p>
          <Said sentence={ask} />
        </p>
        <p class="aside check-why">
          <Said sentence={why} />
        </p>
        {caution === null || caution === told ? null : <p class="check-caution">{caution}</p>}
      </div>
      <div class="check-reading">
        {check.kind === 'confirm' ? null : (
          <dl class="expect">
            <div>
              <dt>Expect</dt>
              <dd>{checkReading(check, check.expected, system)}</dd>
            </div>
            <div>
              <dt>Band</dt>
              <dd>{checkBand(check, system)}</dd>
            </div>
          </dl>
        )}
        <ReadingEntry check={check} unread={typed.is === 'unread'} />
        <div id={`verdict-${id}`} role="status" aria-label={`Verdict, ${title}`}>
          {typed.is === 'judged' ? (
            <ReadingVerdict check={check} judgement={typed.judgement} next={next} />
          ) : null}
          {typed.is === 'unread' ? <Unread check={check} issue={typed.issue} /> : null}
          {typed.is === 'none' ? null : <Outrun id={id} changedAt={changedAt} />}
        </div>
        <CheckNote id={id} title={title} />
      </div>
    </li>
  );
}

function Unread({ check, issue }: Pick<CheckRowFacts, 'check'> & { readonly issue: Issue }): VNode {
  const rig = useRig();
  const reading = useReading(check.id);
  const { nearest } = issue;
  const usable = nearest !== undefined && check.kind === 'measure' && typedValue(check, nearest) !== null;
  return (
    <div class="field-issue">
      <p>
        <span class="issue-mark" aria-hidden="true" />
        {issue.message}
      </p>
      {usable ? (
        <button
          type="button"
          onClick={() => rig.read(check.id, { ...reading, text: nearest, value: typedValue(check, nearest) })}
        >
          Write {nearest}
        </button>
      ) : null}
    </div>
  );
}

/** Says that a reading belongs to an earlier plan. */
function Outrun({ id, changedAt }: { readonly id: string; readonly changedAt: string }): VNode | null {
  const outrun = useRigState(({ saved, record, base }) => {
    const at = saved?.readings[id]?.at;
    const kept = record.readings[id]?.text === base.readings[id]?.text;
    return at !== undefined && kept && at < changedAt;
  });
  return outrun ? (
    <p class="reading-outrun">Read before the job or the kit was changed: read it again.</p>
  ) : null;
}

function CheckNote({ id, title }: { readonly id: string; readonly title: string }): VNode {
  const rig = useRig();
  const reading = useReading(id);
  const [opened, setOpened] = useState(reading.note !== '');
  if (!opened) {
    return (
      <button type="button" class="quiet" aria-label={`Add a note, ${title}`} onClick={() => setOpened(true)}>
        Add a note
      </button>
    );
  }
  return (
    <input
      type="text"
      class="note-field"
      aria-label={`Note, ${title}`}
      placeholder="Note"
      value={reading.note}
      onInput={(event) => rig.read(id, { ...reading, note: event.currentTarget.value })}
    />
  );
}
