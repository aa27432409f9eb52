import {
  type DrawdownReport,
  formatAmount,
  formatStated,
  fromUnit,
  shownNumber,
  type UnitSystem,
} from '@furrow/engine';
import type { VNode } from 'preact';
import { CourseBox, timeScale } from '../../ui/course/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** Pressure in the receiver over all passes and pauses, and from where on it is too low. */
export function DrawdownPanel({ drawdown }: { readonly drawdown: DrawdownReport }): VNode {
  const units = useUnits();
  const { time_s: time, needed_kPa: needed, below_from_s: below } = drawdown;
  const scale = timeScale(time.at(-1) ?? 0);
  const shown = (kPa: number): number => shownNumber(fromUnit(kPa, 'kPa'), 'pressure', units);
  const text = (kPa: number): string => formatStated(kPa, 'kPa', units);
  return (
    <section class="panel" aria-labelledby="drawdown-title">
      <header class="panel-head">
        <h2 id="drawdown-title">
          Receiver over {drawdown.passes.length === 1 ? 'the pass' : `all ${drawdown.passes.length} passes`}
        </h2>
        <p class="caption">{startsText(drawdown.compressor_starts)}</p>
      </header>
      <CourseBox
        title="Pressure in the receiver"
        description={`Lowest ${text(drawdown.lowest_kPa)}${needed === null ? '' : `; ${text(needed)} needed`}. ${belowText(drawdown, units)}`}
        unit={{ across: scale.unit, up: units === 'inch' ? 'psi' : 'bar' }}
        across={time.map((at) => at / scale.seconds)}
        courses={[{ up: drawdown.receiver_kPa.map(shown) }]}
        limit={needed === null ? undefined : { value: shown(needed), text: `needed: ${text(needed)}` }}
        below={below === null ? undefined : { from: below / scale.seconds, text: 'too low from here' }}
      />
      <p class={below === null ? '' : 'verdict-text'}>{belowText(drawdown, units)}</p>
    </section>
  );
}

function belowText(
  { passes, below_from_s, below_from_pass, below_from_mm }: DrawdownReport,
  units: UnitSystem,
): string {
  if (below_from_s === null)
    return passes.length === 1
      ? 'The pressure holds over the whole pass.'
      : `The pressure holds through all ${passes.length} passes and the pauses between them.`;
  if (below_from_s <= 0) return 'The flowing pressure is too low from the first moment.';
  const where =
    below_from_mm === null
      ? ''
      : `, ${formatStated(below_from_mm, 'mm', units, 'length')} into pass ${below_from_pass}`;
  return `The flowing pressure is too low after ${formatAmount(below_from_s, 'time', units)}${where}.`;
}

function startsText(starts: number): string {
  if (starts === 0) return 'the compressor does not start';
  return `the compressor starts ${starts === 1 ? 'once' : `${starts} times`}`;
}
