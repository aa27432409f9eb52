import { formatAmount } from './format-amount.ts';
import type { QuantityKind, UnitSystem } from './quantity-kind.ts';

const FOOT = 0.3048;
const TEN_FEET = 10 * FOOT;

/** How a unit that reports carry is shown. */
interface ShownUnit {
  readonly kind: QuantityKind;
  /** SI per unit. */
  readonly si: number;
  /** Units to show in place of the usual ones of the kind. */
  readonly as?: Readonly<Record<UnitSystem, string>>;
}

const SHOWN: Readonly<Record<string, ShownUnit>> = {
  m: { kind: 'length', si: 1 },
  mm: { kind: 'length', si: 1e-3 },
  min: { kind: 'time', si: 60 },
  A: { kind: 'current', si: 1 },
  V: { kind: 'voltage', si: 1 },
  deg: { kind: 'angle', si: Math.PI / 180 },
  kPa: { kind: 'pressure', si: 1000 },
  m3: { kind: 'volume', si: 1, as: { metric: 'm3', inch: 'ft3' } },
  'm3/min': { kind: 'air_flow', si: 1 / 60, as: { metric: 'm3/min', inch: 'cfm' } },
};

/**
 * Writes a number of a report, whose unit stands beside it, in the reader's units.
 *
 * Lengths, times, flows, volumes, pressures and temperatures change with the units; dBA, %, mT and mg/m3 do not. A
 * number that is not known is a dash.
 *
 * @param value - the number [see unit], any, or null where it is not known
 * @param unit - unit as the report has it [text], such as m, m3/min, kPa, dBA, %
 * @param system - units to show [text], inch or metric
 * @returns amount with its unit [text]
 * @source common practice, no source
 * @example
 * formatReported(56.634, 'm3/min', 'inch') // => "2000 cfm"
 * formatReported(98.976, 'dBA', 'metric') // => "99.0 dBA"
 */
export function formatReported(value: number | null, unit: string, system: UnitSystem): string {
  if (value === null || !Number.isFinite(value)) return '–';
  if (unit === 'degC') return formatAmount(value + 273.15, 'temperature', system);
  if (unit === 'dBA' || unit === 'dB') return `${value.toFixed(1)} ${unit}`;
  // a sixteenth of an inch says nothing of a distance across a bay
  if (unit === 'm' && system === 'inch' && Math.abs(value) >= TEN_FEET) return `${tenths(value / FOOT)} ft`;
  if (unit === 'shade') return `shade ${value}`;
  const shown = SHOWN[unit];
  if (shown === undefined) return `${figures(value)}${unit === '-' || unit === '' ? '' : ` ${unit}`}`;
  const { kind, si, as } = shown;
  return formatAmount(value * si, kind, system, as === undefined ? {} : { unit: as[system] });
}

/** Three figures, and every one of a number above a thousand. */
function figures(value: number): string {
  return Math.abs(value) >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(3)));
}

function tenths(value: number): string {
  return value.toFixed(1).replace(/\.0$/u, '');
}
