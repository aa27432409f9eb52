import { type CommissionCheck, type MeasureCheck, type RoundDepth, sentenceText } from '@furrow/engine';
import { checkBand, checkReading, STAGE_TITLES } from '@furrow/papers/words';
import type { ComponentChildren, VNode } from 'preact';
import { useState } from 'preact/hooks';
import { NumberPad } from '../../../ui/number-pad/index.ts';
import { useUnits } from '../../../ui/theme/index.ts';
import { judgeTyped, typedValue } from '../judge-typed.ts';
import { ReadingEntry } from '../reading-entry.tsx';
import { ReadingVerdict } from '../reading-verdict.tsx';
import { useReading, useRig, useRigState } from '../rig-context.ts';
import { isOfEarlierDay } from './step-of.ts';
import { numberOf, typedUnit, withUnit } from './typed-number.ts';

interface RoundStepProps {
  readonly check: CommissionCheck;
  readonly depth: RoundDepth;
  readonly today: string;
}

/** One check in large type: what to do, what to expect, what was read. */
export function RoundStep({ check, depth, today }: RoundStepProps): VNode {
  const units = useUnits();
  const { id, stage, title, ask, caution } = check;
  const reading = useReading(id);
  const saved = useRigState((state) => state.saved?.readings[id]);
  const [renewed, setRenewed] = useState(false);
  const old = !renewed && isOfEarlierDay(depth, saved, reading.text, today);
  const typed = old ? ({ is: 'none' } as const) : judgeTyped(check, reading.text);
  const verdict = (
    <div id={`round-verdict-${id}`} class="round-verdict" role="status" aria-label={`Verdict, ${title}`}>
      {typed.is === 'judged' ? (
        <ReadingVerdict check={check} judgement={typed.judgement} next={undefined} />
      ) : null}
      {typed.is === 'unread' ? <p class="field-issue">{typed.issue.message}</p> : null}
    </div>
  );
  return (
    <div class="round-step">
      <p class="round-stage">{STAGE_TITLES[stage]}</p>
      <h2 tabIndex={-1}>{title}</h2>
      <p class="round-ask">{sentenceText(ask, units)}</p>
      {caution === null ? null : <p class="check-caution">{caution}</p>}
      {check.kind === 'measure' ? (
        <dl class="expect round-expect">
          <div>
            <dt>Expect</dt>
            <dd>{checkReading(check, check.expected, units)}</dd>
          </div>
          <div>
            <dt>Band</dt>
            <dd>{checkBand(check, units)}</dd>
          </div>
        </dl>
      ) : null}
      {old && saved !== undefined ? (
        <p class="round-old">
          Last read {saved.text} on {saved.at.slice(0, 10)}.{' '}
          <button type="button" onClick={() => setRenewed(true)}>
            Read the same today
          </button>
        </p>
      ) : null}
      {check.kind === 'measure' ? (
        <NumberEntry key={id} check={check} empty={old} unread={typed.is === 'unread'}>
          {verdict}
        </NumberEntry>
      ) : (
        <>
          <ReadingEntry check={check} unread={false} />
          {verdict}
        </>
      )}
    </div>
  );
}

interface NumberEntryProps {
  readonly check: MeasureCheck;
  /** Whether what stands there is of an earlier day and is not shown. */
  readonly empty: boolean;
  readonly unread: boolean;
  /** What the reading means, told below it. */
  readonly children: ComponentChildren;
}

/** A number with its unit, typed with keys large enough for a glove. */
function NumberEntry({ check, empty, unread, children }: NumberEntryProps): VNode {
  const units = useUnits();
  const rig = useRig();
  const reading = useReading(check.id);
  const unit = typedUnit(check, units);
  const number = empty ? '' : numberOf(reading.text, unit);
  const write = (next: string): void => {
    const text = withUnit(next, unit);
    rig.read(check.id, { ...reading, text, value: typedValue(check, text) });
  };
  return (
    <div class="round-entry">
      <div>
        <label class="round-number">
          <span class="unseen">Reading, {check.title}</span>
          <input
            type="text"
            inputMode="none"
            autocomplete="off"
            aria-describedby={`round-verdict-${check.id}`}
            aria-invalid={unread}
            value={number}
            onInput={(event) => write(event.currentTarget.value)}
          />
          <span class="round-unit">{unit}</span>
        </label>
        {children}
      </div>
      <NumberPad
        fractions={units === 'inch' && check.unit === 'mm'}
        negative={check.least < 0}
        onPress={(key) => write(key === 'back' ? number.slice(0, -1) : `${number}${key}`)}
      />
    </div>
  );
}
