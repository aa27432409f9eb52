import { type CostReport, formatStated } from '@furrow/engine';
import { trialText } from '@furrow/papers/blocks';
import { byLength, money, perLength, unpricedText, workTime } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { Figure } from '../../ui/figure/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The whole job in four numbers, each with how far it may go. */
export function CostHead({ cost }: { readonly cost: CostReport }): VNode {
  const units = useUnits();
  const { currency, cost_per_m, time_s, refill, priced } = cost;
  const unpriced = unpricedText(cost);
  const perUnit = (value: number): string => money(perLength(value, units), currency);
  return (
    <section class="panel" aria-labelledby="cost-title">
      <header class="panel-head">
        <h2 id="cost-title">The whole job</h2>
        <p class="caption">
          set-up to refill; the large figure has an even chance of not being passed, the one below nine in ten
        </p>
      </header>
      <dl class="headline cost-figures">
        {priced ? (
          <>
            <Figure
              name="Money"
              value={money(cost.cost.p50, currency)}
              note={`up to ${money(cost.cost.p90, currency)}`}
            />
            <Figure
              name={byLength(units)}
              value={perUnit(cost_per_m.p50)}
              note={`up to ${perUnit(cost_per_m.p90)}`}
            />
          </>
        ) : null}
        <Figure name="Working time" value={workTime(time_s.p50)} note={`up to ${workTime(time_s.p90)}`} />
        <Figure
          name="Weld metal"
          value={formatStated(refill.weld_metal_kg, 'kg', units)}
          note={`${formatStated(refill.skin_weld_metal_kg, 'kg', units)} of it because the skin is ground off`}
        />
      </dl>
      {unpriced === undefined ? null : <p class="notice">{unpriced}</p>}
      <p class="caption">{trialText(cost, units)}</p>
    </section>
  );
}
