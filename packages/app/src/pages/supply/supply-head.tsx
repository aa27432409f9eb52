import { formatStated, type SupplyReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { Figure } from '../../ui/figure/index.ts';
import { VerdictMark } from '../../ui/margins/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';

/** Whether the kit carries the plan and what limits its time, with the numbers it hangs on. */
export function SupplyHead({ supply }: { readonly supply: SupplyReport }): VNode {
  const units = useUnits();
  const { kit, setting, time, electric, air } = supply;
  const verdict = time.limited_by === 'process' ? 'holds' : time.with_kit_s === null ? 'fails' : 'tight';
  const loop = electric?.kind === 'operating_point' ? electric : undefined;
  return (
    <>
      <section class={`panel supply-verdict margin-${verdict}`} aria-labelledby="supply-verdict-title">
        <header class="panel-head">
          <h2 id="supply-verdict-title">
            <VerdictMark verdict={verdict} /> {TITLES[verdict]}
          </h2>
          <p class="caption">{kit.title}</p>
        </header>
        <p>
          <Said sentence={time.says} />
        </p>
        <AdviceFailed limits={supply.limits} />
        {setting?.of === 'plan_without_kit' ? (
          <p>
            Everything below is worked out for the plan that the process alone would allow, which the kit
            fails.
          </p>
        ) : null}
      </section>
      {setting === null ? null : (
        <dl class="headline supply-figures">
          <Figure
            name="Current"
            value={formatStated(setting.current_A, 'A', units)}
            note={`${formatStated(setting.electrode_diameter_mm, 'mm', units, 'length')} electrode at ${formatStated(setting.arc_voltage_V, 'V', units)}`}
          />
          {loop === undefined ? null : (
            <>
              <Figure
                name="Voltage to spare"
                value={formatStated(loop.margin_V, 'V', units)}
                note={`${formatStated(loop.available_V, 'V', units)} given, ${formatStated(loop.needed_V, 'V', units)} needed`}
              />
              <Figure
                name="Power in the arc"
                value={formatStated(loop.arc_kW, 'kW', units)}
                note={`of ${formatStated(loop.output_kW, 'kW', units)} at the terminals; leads and joints take ${formatStated(loop.loss_W, 'W', units)}`}
              />
              <Figure
                name="Hottest lead"
                value={hottest(loop.leads, units)}
                note={`${loop.arc_minutes_in_ten.toFixed(1)} min of arc in the worst ten`}
              />
            </>
          )}
          {air === null ? null : (
            <>
              <Figure
                name="Flowing at the regulator"
                value={formatStated(air.regulator_kPa, 'kPa', units)}
                note={`at least ${formatStated(air.wanted.regulator_kPa, 'kPa', units)} wanted`}
              />
              <Figure
                name="Flowing at the torch"
                value={formatStated(air.torch_kPa, 'kPa', units)}
                note={`at least ${formatStated(air.wanted.torch_kPa, 'kPa', units)} wanted`}
              />
              <Figure
                name="Air through the torch"
                value={airFlow(air.torch_flow_L_per_min, units)}
                note={`compressor gives ${airFlow(air.delivered_L_per_min, units)}`}
              />
              <Figure
                name="Lowest in the receiver"
                value={formatStated(air.drawdown.lowest_kPa, 'kPa', units)}
                note={
                  air.drawdown.needed_kPa === null
                    ? 'no receiver pressure meets what is wanted'
                    : `${formatStated(air.drawdown.needed_kPa, 'kPa', units)} needed`
                }
              />
            </>
          )}
        </dl>
      )}
    </>
  );
}

const TITLES = {
  holds: 'The kit carries the plan',
  tight: 'The kit carries a plan, and limits it',
  fails: 'The kit carries no plan',
} as const;

/** Margins that bind nothing but are not kept: a headline of “carries the plan” alone would hide them. */
function AdviceFailed({ limits }: { readonly limits: SupplyReport['limits'] }): VNode | null {
  const failed = limits.filter(({ hard, verdict }) => !hard && verdict === 'fails');
  if (failed.length === 0) return null;
  const titles = failed.map(({ title }) => title.toLowerCase()).join('; ');
  return <p>Advice not kept, look at it before the first arc: {titles}.</p>;
}

function hottest(leads: readonly { readonly temperature_C: number }[], units: 'metric' | 'inch'): string {
  if (leads.length === 0) return '–';
  const most = Math.max(...leads.map((lead) => lead.temperature_C));
  return formatStated(most, 'degC', units);
}

function airFlow(litres: number, units: 'metric' | 'inch'): string {
  return formatStated(litres, 'L/min', units);
}
