import type { ThermalMetal } from '../material/index.ts';
import { amountOf, type Sentence, say } from '../quantity/index.ts';
import {
  COOLING_START_MOST,
  coolingTimeThick,
  coolingTimeThin,
  transitionThickness,
} from './cooling-time.ts';
import type { HeatSpan } from './kept-heat.ts';
import { coolingTimeOfLine } from './line-source.ts';
import type { CoolingRow, HeatOutcome } from './outcome.ts';
import { rounded, spanOf, spanOrNull } from './span.ts';

const EIGHT_HUNDRED = 1073.15;
/** Field and formula that differ by less are said to agree [-]. */
const AGREE = 0.15;

/** The last pass as the formulas see it. */
export interface CoolingInput {
  readonly metal: ThermalMetal;
  /** Whether the metal is one that the formulas of EN 1011-2 are for. */
  readonly ferritic: boolean;
  /** Thickness of the plate [m]. */
  readonly thickness: number;
  /** Heat kept of the last pass [J/m]. */
  readonly kept: HeatSpan;
  /** Temperature beside the groove before it [K]. */
  readonly before: HeatSpan;
  /** Cooling time of the field [s]. */
  readonly field: HeatSpan | null;
}

/** The cooling times by formula beside that of the field, with why they differ. */
export function coolingRows(input: CoolingInput): HeatOutcome['cooling'] {
  const cool = Object.values(input.before).every((start) => start <= COOLING_START_MOST);
  const formulas = [...(input.ferritic ? annexD(input, cool) : []), exact(input, cool)];
  return { rows: formulas, remarks: remarksOf(input, formulas, cool) };
}

function annexD({ thickness, kept, before }: CoolingInput, cool: boolean): CoolingRow[] {
  const transition = spanOf((end) => transitionThickness(kept[end], before[end]));
  const thick = Object.values(transition).every((each) => thickness >= each);
  const thin = Object.values(transition).every((each) => thickness < each);
  const span = say`${amountOf(transition.least, 'depth')} to ${amountOf(transition.most, 'depth')}`;
  const shape =
    'For a shape factor of 1, a run on a plate; a groove has no entry, and with 0.67 the times are two thirds of these.';
  const row = (
    name: string,
    time: (end: keyof HeatSpan) => number,
    inside: boolean,
    note: Sentence,
  ): CoolingRow => ({
    name,
    t85: cool ? spanOf(time) : null,
    insideRange: cool && inside,
    note: say`${note} ${shape}`,
    source: { text: 'EN 1011-2:2001 Annex D', provenance: 'memory' },
  });
  return [
    row(
      'EN 1011-2, thick plate',
      (end) => coolingTimeThick(kept[end], before[end], 1),
      thick,
      say`Holds from the transition thickness on, here ${span}.`,
    ),
    row(
      'EN 1011-2, thin plate',
      (end) => coolingTimeThin(kept[end], thickness, before[end], 1),
      thin,
      say`Holds below the transition thickness, here ${span}.`,
    ),
  ];
}

/** Mean conductivity and heat capacity of the metal between a temperature and 800 degC. */
function meansTo800(
  metal: ThermalMetal,
  start: number,
): { readonly conductivity: number; readonly heatCapacity: number } {
  const place = (kelvin: number): number =>
    Math.min(metal.enthalpy.length - 1, Math.max(0, Math.round((kelvin - metal.start) / metal.step)));
  const low = place(start);
  const high = place(EIGHT_HUNDRED);
  const slice = metal.conductivity.subarray(low, high + 1);
  return {
    conductivity: slice.reduce((sum, value) => sum + value, 0) / slice.length,
    heatCapacity: (metal.enthalpy[high]! - metal.enthalpy[low]!) / ((high - low) * metal.step),
  };
}

function exact({ metal, thickness, kept, before }: CoolingInput, cool: boolean): CoolingRow {
  const time = (end: keyof HeatSpan): number =>
    coolingTimeOfLine({ ...meansTo800(metal, before[end]), energy: kept[end], thickness }, before[end]);
  return {
    name: 'line source on a plate, exact',
    t85: cool ? spanOrNull(time) : null,
    insideRange: cool,
    note: 'All heat on one line of a flat plate, at once, with mean properties up to 800 degC; right through the transition from thick to thin.',
    source: { text: 'Carslaw and Jaeger ch. 10, images', provenance: 'derived' },
  };
}

function remarksOf(
  { field, before, thickness }: CoolingInput,
  formulas: readonly CoolingRow[],
  cool: boolean,
): Sentence[] {
  if (!cool) {
    return [
      say`The plate is at ${amountOf(before.most, 'temperature')} before the last pass; above ${amountOf(COOLING_START_MOST, 'temperature')} the formulas are left, as they fail towards 500 degC. The field has no such bound.`,
    ];
  }
  if (field === null) {
    return [
      'The groove’s surface does not pass both 800 and 500 degC in all three runs, so the field gives no cooling time; the formulas suppose that it does.',
    ];
  }
  const remarks: Sentence[] = [];
  const of = formulas.find(({ insideRange, t85 }) => insideRange && t85 !== null);
  if (of?.t85) {
    const ratio = field.middle / of.t85.middle;
    remarks.push(
      Math.abs(ratio - 1) < AGREE
        ? `Field and ${of.name} agree within ${(AGREE * 100).toFixed(0)} % for the middle share of heat.`
        : `For the middle share of heat the field cools in ${rounded(field.middle)} s, ${of.name} in ${rounded(of.t85.middle)} s: ${ratio < 1 ? 'quicker' : 'slower'} by a factor of ${rounded(ratio < 1 ? 1 / ratio : ratio)}.`,
    );
  }
  return [
    ...remarks,
    'The field gives the heat to the whole face of the groove, so its surface is less hot than a line of heat and passes 800 degC sooner after the arc.',
    say`In the field the groove is gone from the plate of ${amountOf(thickness, 'depth')}: heat flows through the ligament and past the walls, where the formulas have a whole plate.`,
    'The constants of EN 1011-2 are fitted to welds and imply a conductivity of about 24 W/(m K); the field has that of the metal at each temperature, with its latent heat.',
    'The formulas know neither heat left over from earlier passes below the surface nor losses to the air.',
  ];
}
