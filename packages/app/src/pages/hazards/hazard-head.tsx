import { formatStated, type HazardReport } from '@furrow/engine';
import { shadeFigure } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { Figure } from '../../ui/figure/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** What must be known first, and that none of it permits work. */
export function HazardHead({ report }: { readonly report: HazardReport }): VNode {
  const units = useUnits();
  const { setting, fire_zone: zone, defers } = report;
  return (
    <section class="panel" aria-labelledby="hazard-title">
      <header class="panel-head">
        <h2 id="hazard-title">To keep clear of</h2>
        <p class="caption">
          {formatStated(setting.current_A, 'A', units)}{' '}
          {setting.of === 'plan' ? 'in the plan' : 'at most from the source: there is no plan'},{' '}
          {setting.torches === 1 ? 'one torch' : `${setting.torches} torches at once`},{' '}
          {setting.place.replace('_', ' ')}
        </p>
        <button type="button" class="hazard-print" onClick={() => window.print()}>
          Print
        </button>
      </header>
      <dl class="headline hazard-figures">
        <Figure name="Fuel, all round" value={formatStated(zone.radius_m, 'm', units)} note="and below" />
        <Figure name="Fuel, ahead" value={formatStated(zone.ahead_m, 'm', units)} note="along the jet" />
        <Figure
          name="Fire watch"
          value={formatStated(zone.watch_min, 'min', units)}
          note="after the last arc"
        />
        <Figure name="Filter shade" {...shadeFigure(report)} />
        <Figure name="Implant wearers" value="stay out" note="unless cleared in person" />
      </dl>
      <p class="hazard-defers">{defers}</p>
    </section>
  );
}
