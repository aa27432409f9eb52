import type { CommissionCheck, ReadingJudgement } from '@furrow/engine';
import type { VNode } from 'preact';
import { Said } from '../../ui/theme/index.ts';
import { ReadingMark, VERDICT_WORDS } from './reading-mark.tsx';
import type { NextBesideReading } from './rig-faults.tsx';

interface ReadingVerdictProps {
  readonly check: CommissionCheck;
  readonly judgement: ReadingJudgement;
  /** What to check next, where the reading is off. */
  readonly next: NextBesideReading | undefined;
}

/** Whether the reading is in its band, in words and a mark, and what explains it where it is not. */
export function ReadingVerdict({ check, judgement, next }: ReadingVerdictProps): VNode {
  const { verdict, says, faults } = judgement;
  const fine = verdict === 'in_band' || verdict === 'met';
  const hint = hintOf(check, verdict);
  return (
    <div class={`reading-verdict ${fine ? 'reading-fine' : 'reading-off'}`}>
      <p>
        <ReadingMark verdict={verdict} />
        <span>
          <strong>{VERDICT_WORDS[verdict]}</strong>
          {fine || check.kind === 'confirm' ? null : (
            <>
              : <Said sentence={says} />
            </>
          )}
        </span>
      </p>
      {fine ? null : (
        <>
          {faults.length === 0 ? null : (
            <>
              <p class="aside">It can come from:</p>
              <ul class="behind-list">
                {faults.map(({ cause, title, remedy }) => (
                  <li key={cause}>
                    <strong>{title}.</strong> {remedy}
                  </li>
                ))}
              </ul>
            </>
          )}
          {hint === undefined ? null : <p>{hint}</p>}
          {faults.length > 0 || hint !== undefined ? null : <p>Find out why before going on.</p>}
          {next === undefined ? null : (
            <p class="check-next">
              Check next: <a href={next.href}>{next.title}</a> <span class="aside">{next.minutes} min</span> ·{' '}
              <a href="#faults-title">All causes</a>
            </p>
          )}
        </>
      )}
    </div>
  );
}

function hintOf(check: CommissionCheck, verdict: ReadingJudgement['verdict']): string | undefined {
  if (verdict === 'low' || verdict === 'high') return check.hints[verdict];
  return verdict === 'not_met' ? check.hints.unmet : undefined;
}
