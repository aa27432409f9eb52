import type { CommissionCheck, UnitSystem } from '@furrow/engine';
import { STAGE_TITLES } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { CheckRow } from './check-row.tsx';
import { stagesOf } from './check-stages.ts';
import type { NextBesideReading } from './rig-faults.tsx';

interface CheckListProps {
  readonly checks: readonly CommissionCheck[];
  readonly system: UnitSystem;
  readonly changedAt: string;
  /** What to check next, told beside a reading that is off. */
  readonly next: NextBesideReading | undefined;
}

/** The checks before the first arc, stage by stage in the order in which they are made. */
export function CheckList({ checks, system, changedAt, next }: CheckListProps): VNode {
  return (
    <section class="panel" aria-labelledby="checks-title">
      <header class="panel-head">
        <h2 id="checks-title">Checks before the first arc</h2>
        <p class="caption">in this order; type a reading as you would write it down, with its unit</p>
      </header>
      {stagesOf(checks).map(({ stage, caution, checks: own }) => (
        <section key={stage} class="check-stage" aria-labelledby={`stage-${stage}`}>
          <h3 id={`stage-${stage}`}>{STAGE_TITLES[stage]}</h3>
          {caution === null ? null : <p class="check-caution">{caution}</p>}
          <ol class="check-list">
            {own.map((check) => (
              <CheckRow
                key={check.id}
                check={check}
                system={system}
                changedAt={changedAt}
                told={caution}
                next={next}
              />
            ))}
          </ol>
        </section>
      ))}
    </section>
  );
}
