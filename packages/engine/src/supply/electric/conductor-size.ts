import type { Outcome } from '../../issue/index.ts';
import { INCH } from '../../quantity/index.ts';
import { supplyIssue } from './supply-issue.ts';

/** Family of sizes: metric flexible conductors, or AWG and kcmil. */
export type SizeFamily = 'IEC 60228 class 5 and 6' | 'NEC chapter 9 table 8';

/** A size of conductor with the resistance that its standard gives. */
export interface ConductorSize {
  /** Name as the trade writes it, such as `95 mm2` or `4/0 AWG`. */
  readonly name: string;
  readonly family: SizeFamily;
  /** Nominal area of copper [m2]. */
  readonly area: number;
  /** Resistance of plain copper at the family's own reference temperature [ohm/m]. */
  readonly resistance: number;
  /** Resistance of tinned copper there, where the standard was at hand [ohm/m]. */
  readonly tinnedResistance?: number;
  /** 20 degC in IEC 60228, 75 degC in the NEC: never to be mixed. */
  readonly referenceTemperature: '20 degC' | '75 degC';
}

/** mm2, then ohm/km at 20 degC: plain and tinned; IEC 60228:2004, classes 5 and 6 share the column (confirmed). */
const METRIC: readonly (readonly [number, number, number])[] = [
  [16, 1.21, 1.24],
  [25, 0.78, 0.795],
  [35, 0.554, 0.565],
  [50, 0.386, 0.393],
  [70, 0.272, 0.277],
  [95, 0.206, 0.21],
  [120, 0.161, 0.164],
  [150, 0.129, 0.132],
  [185, 0.106, 0.108],
  [240, 0.0801, 0.0817],
];

/** Gauge number (0 = 1/0, -3 = 4/0), then ohm per 1000 ft at 75 degC, uncoated; NEC chapter 9 table 8 (confirmed). */
const GAUGE: readonly (readonly [number, number])[] = [
  [6, 0.491],
  [4, 0.308],
  [3, 0.245],
  [2, 0.194],
  [1, 0.154],
  [0, 0.122],
  [-1, 0.0967],
  [-2, 0.0766],
  [-3, 0.0608],
];

/** kcmil, then ohm per 1000 ft at 75 degC, uncoated; NEC chapter 9 table 8 (confirmed). */
const KCMIL: readonly (readonly [number, number])[] = [
  [250, 0.0515],
  [300, 0.0429],
  [350, 0.0367],
  [400, 0.0321],
  [500, 0.0258],
];

const KILOFOOT = 304.8;
/** Square metres in a thousand circular mils [m2]. */
const KCMIL_AREA = 1000 * (Math.PI / 4) * (0.001 * INCH) ** 2;
/** How far an area may lie from the nominal one it is taken for: tables round by up to 0.1 % [-]. */
const AREA_TOLERANCE = 2e-3;

/** Every size whose resistance is known, by family, the smallest first. */
export const CONDUCTOR_SIZES: readonly ConductorSize[] = [
  ...METRIC.map(([mm2, plain, tinned]) => ({
    name: `${mm2} mm2`,
    family: 'IEC 60228 class 5 and 6' as const,
    area: mm2 * 1e-6,
    resistance: plain / 1000,
    tinnedResistance: tinned / 1000,
    referenceTemperature: '20 degC' as const,
  })),
  ...GAUGE.map(([gauge, ohms]) => ({
    name: `${gauge > 0 ? gauge : `${1 - gauge}/0`} AWG`,
    family: 'NEC chapter 9 table 8' as const,
    area: (Math.PI / 4) * (0.005 * INCH * 92 ** ((36 - gauge) / 39)) ** 2,
    resistance: ohms / KILOFOOT,
    referenceTemperature: '75 degC' as const,
  })),
  ...KCMIL.map(([kcmil, ohms]) => ({
    name: `${kcmil} kcmil`,
    family: 'NEC chapter 9 table 8' as const,
    area: kcmil * KCMIL_AREA,
    resistance: ohms / KILOFOOT,
    referenceTemperature: '75 degC' as const,
  })),
];

/**
 * The conductor size that an area of copper belongs to.
 *
 * An amount such as `95 mm2`, `4/0 AWG` or `500 kcmil` is an area once it is read; this finds the size again, within
 * 0.2 %. An area that is no listed size is refused with the nearest one: nothing is interpolated.
 *
 * @param area - nominal area of copper [m2], 13.3e-6 to 253e-6 and a listed size
 * @param path - where it stands in the document [text], empty if nowhere
 * @returns the size, or the issue [record]
 * @source IEC 60228:2004; ASTM B258; NEC chapter 9 table 8 (confirmed)
 * @example
 * conductorSizeOf(95e-6, '').value.resistance // => 0.000206
 * conductorSizeOf(107.2193e-6, '').value.name // => "4/0 AWG"
 * conductorSizeOf(90e-6, '').issues[0].nearest // => "95 mm2"
 */
export function conductorSizeOf(area: number, path: string): Outcome<ConductorSize> {
  const distance = (size: ConductorSize): number => Math.abs(Math.log(size.area / area));
  const nearest =
    area > 0 && Number.isFinite(area)
      ? CONDUCTOR_SIZES.reduce((best, size) => (distance(size) < distance(best) ? size : best))
      : undefined;
  if (nearest && distance(nearest) <= AREA_TOLERANCE) return { ok: true, value: nearest };
  const read = `${Number((area * 1e6).toPrecision(4))} mm2`;
  return supplyIssue('ELECTRIC_SIZE_UNKNOWN', {
    message: `${read} is not a size of lead whose resistance is known.`,
    path,
    read,
    accepted: CONDUCTOR_SIZES.map((size) => size.name).join(', '),
    ...(nearest && { nearest: nearest.name }),
  });
}

/** The next larger size of the same family, or undefined for the largest. */
export function nextSize(size: ConductorSize): ConductorSize | undefined {
  return CONDUCTOR_SIZES.filter(
    (other) => other.family === size.family && other.area > size.area * 1.001,
  ).sort((a, b) => a.area - b.area)[0];
}
