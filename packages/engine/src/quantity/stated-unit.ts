import type { AmountKind } from './amount.ts';
import { ZERO_CELSIUS } from './si.ts';

/** A unit of results: what it measures, and its size as a ratio of exact numbers, so that 90 s is exactly 1.5 min. */
interface StatedScale {
  /** How people read an amount of it; none: it is read as it stands. */
  readonly kind?: AmountKind;
  /** Units per SI unit. */
  readonly perSi: readonly [number, number];
  /** Reading of zero in the SI unit; only degrees Celsius have one. */
  readonly offset?: number;
}

const UNITS = {
  mm: { kind: 'depth', perSi: [1e3, 1] },
  m: { kind: 'length', perSi: [1, 1] },
  um: { perSi: [1e6, 1] },
  mm2: { kind: 'area', perSi: [1e6, 1] },
  mm3: { perSi: [1e9, 1] },
  m3: { kind: 'room_volume', perSi: [1, 1] },
  L: { kind: 'volume', perSi: [1e3, 1] },
  'mm/min': { kind: 'speed', perSi: [6e4, 1] },
  'm/h': { perSi: [3600, 1] },
  'cm3/min': { perSi: [6e7, 1] },
  'm/min': { kind: 'speed', perSi: [60, 1] },
  'mm3/mm': { kind: 'area', perSi: [1e6, 1] },
  deg: { kind: 'angle', perSi: [180, Math.PI] },
  s: { kind: 'time', perSi: [1, 1] },
  min: { kind: 'time', perSi: [1, 60] },
  h: { kind: 'time', perSi: [1, 3600] },
  A: { kind: 'current', perSi: [1, 1] },
  kA: { kind: 'current', perSi: [1, 1e3] },
  V: { kind: 'voltage', perSi: [1, 1] },
  mV: { kind: 'voltage', perSi: [1e3, 1] },
  mohm: { kind: 'resistance', perSi: [1e3, 1] },
  W: { kind: 'power', perSi: [1, 1] },
  kW: { kind: 'power', perSi: [1, 1e3] },
  kVA: { perSi: [1, 1e3] },
  J: { kind: 'energy', perSi: [1, 1] },
  kJ: { kind: 'energy', perSi: [1, 1e3] },
  MJ: { kind: 'energy', perSi: [1, 1e6] },
  'kJ/mm': { kind: 'heat_per_length', perSi: [1, 1e6] },
  'kJ/m': { kind: 'heat_per_length', perSi: [1, 1e3] },
  'J/mm3': { perSi: [1, 1e9] },
  kPa: { kind: 'pressure', perSi: [1, 1e3] },
  bar: { kind: 'pressure', perSi: [1, 1e5] },
  'L/min': { kind: 'air_flow', perSi: [6e4, 1] },
  'm3/min': { kind: 'ventilation', perSi: [60, 1] },
  kg: { kind: 'mass', perSi: [1, 1] },
  'kg/h': { perSi: [3600, 1] },
  degC: { kind: 'temperature', perSi: [1, 1], offset: ZERO_CELSIUS },
  K: { kind: 'temperature_difference', perSi: [1, 1] },
  mT: { perSi: [1e3, 1] },
  'g/min': { perSi: [6e4, 1] },
  'mg/m3': { perSi: [1e6, 1] },
  dB: { kind: 'sound', perSi: [1, 1] },
  dBA: { kind: 'sound', perSi: [1, 1] },
  HV: { perSi: [1, 1] },
  shade: { perSi: [1, 1] },
  '%': { perSi: [100, 1] },
  '-': { perSi: [1, 1] },
  electrodes: { perSi: [1, 1] },
  layers: { perSi: [1, 1] },
  stops: { perSi: [1, 1] },
  locks: { perSi: [1, 1] },
  tracks: { perSi: [1, 1] },
  stations: { perSi: [1, 1] },
  plates: { perSi: [1, 1] },
  'of 7': { perSi: [1, 1] },
  '% vol': { perSi: [100, 1] },
} as const satisfies Readonly<Record<string, StatedScale>>;

/** Units in which results state amounts, as they stand in a `unit` field. */
export type StatedUnit = keyof typeof UNITS;

/** All of them, for the schemas of results. */
export const STATED_UNITS = Object.keys(UNITS) as [StatedUnit, ...StatedUnit[]];

type KeyForm<Unit extends string> = Unit extends '%'
  ? 'percent'
  : Unit extends `${infer Top}/${infer Bottom}`
    ? `${Top}_per_${Bottom}`
    : Unit;

/** The same units as they end the keys of results, such as `depth_mm` and `travel_mm_per_min`. */
export type EdgeUnit = KeyForm<
  Exclude<
    StatedUnit,
    | '-'
    | 'electrodes'
    | 'layers'
    | 'stops'
    | 'locks'
    | 'tracks'
    | 'stations'
    | 'plates'
    | 'shade'
    | 'of 7'
    | '% vol'
  >
>;

const SCALES: Readonly<Record<string, StatedScale>> = Object.fromEntries(
  Object.entries(UNITS).flatMap(([unit, scale]) => {
    const key = unit === '%' ? 'percent' : unit.replace('/', '_per_');
    return [
      [unit, scale],
      [key, scale],
    ];
  }),
);

/**
 * Value of an SI quantity in a unit that results state.
 *
 * @param value - quantity in its SI unit [SI unit of the quantity], any number
 * @param unit - unit of the key or of the field [text], one of the EdgeUnit or StatedUnit names
 * @returns the quantity in that unit [that unit]
 * @source none: bookkeeping
 * @example
 * inUnit(0.0118, 'mm_per_min') // => 708
 */
export function inUnit(value: number, unit: EdgeUnit | StatedUnit): number {
  const { perSi, offset = 0 } = SCALES[unit]!;
  return ((value - offset) * perSi[0]) / perSi[1];
}

/**
 * SI value of a number that a result states.
 *
 * @param value - the number [see unit], any
 * @param unit - the unit that stands beside it [text], one of the StatedUnit names
 * @returns the quantity in its SI unit [SI unit of the quantity]
 * @source none: bookkeeping
 * @example
 * fromUnit(708, 'mm/min') // => 0.0118
 */
export function fromUnit(value: number, unit: EdgeUnit | StatedUnit): number {
  const { perSi, offset = 0 } = SCALES[unit]!;
  return (value * perSi[1]) / perSi[0] + offset;
}

/**
 * What a stated unit measures and how people read it.
 *
 * @param unit - the unit [text], one of the StatedUnit names
 * @returns the kind [text]; undefined where people read it as it stands
 * @source none: bookkeeping
 * @example
 * kindOfUnit('kPa') // => "pressure"
 */
export function kindOfUnit(unit: StatedUnit): AmountKind | undefined {
  return SCALES[unit]!.kind;
}
