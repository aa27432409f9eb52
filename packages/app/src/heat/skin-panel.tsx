import { formatAmount, formatStated, type HeatReport, type UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { SourceText } from '../source/index.ts';
import { useUnits } from '../theme/index.ts';

/** The carburised skin: what is ground away and what that adds to the refill. */
export function SkinPanel({ report }: { readonly report: HeatReport }): VNode {
  const units = useUnits();
  const { skin } = report;
  const area = (value: number): string => formatAmount(value * 1e-6, 'area', units);
  return (
    <section class="panel" aria-labelledby="skin-title">
      <header class="panel-head">
        <h2 id="skin-title">Carburised skin and refill</h2>
      </header>
      <p>
        Grind <b>{formatStated(skin.allowance_mm, 'mm', units)}</b> off all round the groove.{' '}
        <SourceText source={skin.source} />
      </p>
      <p>
        The section grows from {area(skin.gouged_area_mm2)} to <b>{area(skin.ground_area_mm2)}</b>,{' '}
        {skin.added_percent.toFixed(0)} % more to fill: {mass(skin.refill_kg, units)} of weld metal for the
        whole seam, {mass(skin.added_kg, units)} of it for the grinding.
      </p>
    </section>
  );
}

function mass(kilograms: number, units: UnitSystem): string {
  return units === 'inch' ? `${(kilograms / 0.45359237).toFixed(1)} lb` : `${kilograms.toFixed(1)} kg`;
}
