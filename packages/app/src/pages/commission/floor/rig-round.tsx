import { type CommissionCheck, type RoundDepth, roundOf } from '@furrow/engine';
import { ROUND_TITLES } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { judgeTyped } from '../judge-typed.ts';
import { useRigState } from '../rig-context.ts';
import type { RoundPlace } from './round-memory.ts';
import { RoundStep } from './round-step.tsx';
import { dayOf, isOfEarlierDay, stepOf } from './step-of.ts';

interface RigRoundProps {
  readonly depth: RoundDepth;
  /** Every check of the rig. */
  readonly checks: readonly CommissionCheck[];
  readonly place: RoundPlace;
  readonly onMove: (check: string) => void;
}

/** A round at the rig, one check at a time, gone through with a thumb. */
export function RigRound({ depth, checks, place, onMove }: RigRoundProps): VNode {
  const round = roundOf(checks, depth, place.changed);
  const today = dayOf(new Date().toISOString());
  const readings = useRigState((state) => state.record.readings);
  const saved = useRigState((state) => state.saved);
  const made = (id: string): boolean => {
    const text = readings[id]?.text ?? '';
    return text !== '' && !isOfEarlierDay(depth, saved?.readings[id], text, today);
  };
  const at = stepOf(round.checks, place.check, made);
  // until it is moved from, the check shown first stays, however much is typed at it
  useEffect(() => {
    if (place.check === undefined && round.checks.length > 0) onMove(round.checks[at]?.id ?? 'end');
  }, [place.check, round.checks.length]);
  const box = useRef<HTMLElement>(null);
  const go = (to: number): void => {
    onMove(round.checks[to]?.id ?? 'end');
    requestAnimationFrame(() => {
      box.current?.scrollIntoView({ block: 'start' });
      box.current?.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true });
    });
  };
  const total = round.checks.length;
  const check = round.checks[at];
  if (total === 0)
    return (
      <p class="round-says">
        {place.view === 'change' ? 'Say above what was changed.' : 'There are no checks for this job yet.'}
      </p>
    );
  return (
    <section ref={box} class="panel rig-round" aria-label={ROUND_TITLES[depth]}>
      <p class="round-progress" role="status" aria-label="Step">
        {check === undefined ? `All ${total} gone through` : `${at + 1} of ${total}`}
        <span class="aside">
          {' '}
          {round.checks.filter(({ id }) => made(id)).length} made · {ROUND_TITLES[depth].toLowerCase()}
        </span>
      </p>
      {check === undefined ? (
        <RoundEnd checks={round.checks} made={made} onOpen={(id) => go(stepOf(round.checks, id, made))} />
      ) : (
        <RoundStep key={check.id} check={check} depth={depth} today={today} />
      )}
      <div class="round-moves">
        <button type="button" disabled={at === 0} onClick={() => go(at - 1)}>
          Back
        </button>
        <button type="button" class="primary" disabled={check === undefined} onClick={() => go(at + 1)}>
          {at + 1 === total ? 'To the end' : 'Next'}
        </button>
      </div>
      <details class="round-says">
        <summary>What this round leaves out</summary>
        <p>{round.says}</p>
        {round.left_out.length === 0 ? null : <p class="aside">{round.left_out.join('; ')}.</p>}
      </details>
    </section>
  );
}

interface RoundEndProps {
  readonly checks: readonly CommissionCheck[];
  readonly made: (check: string) => boolean;
  readonly onOpen: (check: string) => void;
}

/** What the round came to: what is off and what is open, each a way back to it. */
function RoundEnd({ checks, made, onOpen }: RoundEndProps): VNode {
  const readings = useRigState((state) => state.record.readings);
  const rows = checks.flatMap((check) => {
    if (!made(check.id)) return [{ check, words: 'not made' }];
    const typed = judgeTyped(check, readings[check.id]?.text ?? '');
    if (typed.is !== 'judged') return [{ check, words: 'cannot be read' }];
    const { verdict } = typed.judgement;
    return verdict === 'in_band' || verdict === 'met' ? [] : [{ check, words: 'not as it should be' }];
  });
  return (
    <div class="round-step">
      <h2 tabIndex={-1}>{rows.length === 0 ? 'All as it should be' : 'Before the first arc'}</h2>
      {rows.length === 0 ? (
        <p class="round-ask">
          Nothing here releases the work: those who are licensed to do so sign on paper.
        </p>
      ) : (
        <ul class="round-open">
          {rows.map(({ check, words }) => (
            <li key={check.id}>
              <button type="button" onClick={() => onOpen(check.id)}>
                {check.title}: {words}
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
