import {
  type Answer,
  formatAmount,
  formatStated,
  fromUnit,
  metalOf,
  type Plan,
  type ReadJob,
  type UnitSystem,
} from '@furrow/engine';
import { fineStated } from '../words/index.ts';
import { type Figure, valueAndUnit } from './figure.ts';
import { plateFigures } from './plate-figures.ts';
import { stickOutOf, turningFigures } from './torch-blocks.ts';

/** What the crew sets for the passes, as big numbers. */
export function settingFigures(plan: Plan, units: UnitSystem): Figure[] {
  const of = (key: 'current_A' | 'arc_voltage_V'): number[] => plan.passes.map((pass) => pass[key]);
  const fixed = plan.passes
    .filter((pass) => !pass.set_by_gauge)
    .map((pass) => fromUnit(pass.travel_mm_per_min, 'mm/min'));
  const gauged = plan.passes.some((pass) => pass.set_by_gauge);
  const dwells = plan.passes.map((pass) => pass.dwell_s);
  const travel = {
    label: 'Travel',
    ...(fixed.length === 0 ? { value: 'by gauge' } : valueAndUnit(rangeOf(fixed, 'speed', units))),
    note: [
      ...(gauged && fixed.length > 0 ? ['then by the gauge'] : []),
      `dwell ${rangeOf(dwells, 'time', units)}`,
    ].join(', '),
  };
  return [
    {
      label: 'Electrode',
      ...valueAndUnit(formatStated(plan.electrode_diameter_mm, 'mm', units, 'length')),
      note: plan.electrode_kind,
    },
    { label: 'Current', ...valueAndUnit(rangeOf(of('current_A'), 'current', units)) },
    { label: 'Arc voltage', ...valueAndUnit(rangeOf(of('arc_voltage_V'), 'voltage', units)) },
    travel,
    { label: 'Passes', value: String(plan.passes.length), note: passesNote(plan) },
  ];
}

/** How rig and plate are to be before the first arc, as big numbers. */
export function rigFigures(read: ReadJob, answer: Answer, plan: Plan, units: UnitSystem): Figure[] {
  const { supply } = answer;
  const { material, composition } = read.job.plate;
  const pole = supply?.polarity?.electrode ?? metalOf(material, composition).poles[0];
  const angles = plan.passes.map((pass) => (pass.push_angle_deg * Math.PI) / 180);
  const air = supply?.air?.wanted.regulator_kPa;
  return [
    {
      label: 'Polarity',
      value: pole === 'electrode_positive' ? 'electrode +' : 'electrode −',
      note: pole === 'electrode_positive' ? 'direct current, work to minus' : 'direct current, work to plus',
    },
    air === undefined
      ? { label: 'Air, flowing', value: 'ask', note: 'no kit is stated: as the torch’s maker asks' }
      : {
          label: 'Air, flowing',
          ...valueAndUnit(formatStated(air, 'kPa', units)),
          note: 'at least, at the regulator',
        },
    { label: 'Angle', value: rangeOf(angles, 'angle', units), note: 'push, to the surface' },
    {
      label: 'Stick-out',
      ...valueAndUnit(formatAmount(stickOutOf(answer), 'length', units)),
      note: 'jaws to tip',
    },
    ...turningFigures(read, answer, plan, units),
    ...plateFigures(read, units),
  ];
}

/** What to bring and what to expect, as plain figures. */
export function expectationFigures(plan: Plan, units: UnitSystem): Figure[] {
  const { floor_depth_mm: floor, width_mm: width, electrodes_used: used } = plan;
  const band = (values: { p05: number; p95: number }): string =>
    `90 in 100: ${fineStated(values.p05, units)} to ${fineStated(values.p95, units)}`;
  return [
    { label: 'Expected floor', ...valueAndUnit(formatStated(floor.p50, 'mm', units)), note: band(floor) },
    { label: 'Expected width', ...valueAndUnit(formatStated(width.p50, 'mm', units)), note: band(width) },
    {
      label: 'Electrodes to bring',
      value: String(Math.ceil(used.p90 - 1e-9)),
      note: `mean ${used.mean.toFixed(1)}, half the time at most ${Math.ceil(used.p50 - 1e-9)}`,
    },
    {
      label: 'Arc time',
      value: formatAmount(plan.arc_time_s.p50, 'time', units),
      note: `whole job ${spreadText(plan.job_time_s, units)}`,
    },
    {
      label: 'If the arc goes out',
      ...valueAndUnit(formatStated(plan.loss_length_mm, 'mm', units)),
      note: 'stays ungouged',
    },
  ];
}

/** Mean, and what 9 in 10 stay within. */
function spreadText({ mean, p50, p90 }: Plan['job_time_s'], units: UnitSystem): string {
  const [middle, usual, most] = [mean, p50, p90].map((time) => formatAmount(time, 'time', units));
  return `${usual}; mean ${middle}, 9 in 10 within ${most}`;
}

/** `2 layers of 3 tracks`. */
export function passesNote(plan: Plan): string {
  const count = (amount: number, name: string): string => `${amount} ${name}${amount === 1 ? '' : 's'}`;
  return `${count(plan.layers, 'layer')} of ${count(plan.tracks, 'track')}`;
}

function rangeOf(
  values: readonly number[],
  kind: 'current' | 'voltage' | 'speed' | 'angle' | 'time',
  units: UnitSystem,
): string {
  const least = formatAmount(Math.min(...values), kind, units);
  const most = formatAmount(Math.max(...values), kind, units);
  return least === most ? least : `${least.replace(/\s?[^\d\s.,].*$/u, '')}–${most}`;
}
