import { formatAmount, type QuantityKind, type UnitSystem } from '@furrow/engine';

interface EdgeScale {
  readonly kind: QuantityKind;
  /** SI per unit. */
  readonly si: number;
}

/** Units that results and limits carry, and what they are in SI. */
const SCALES: Readonly<Record<string, EdgeScale>> = {
  mm: { kind: 'length', si: 1e-3 },
  'mm/min': { kind: 'speed', si: 1e-3 / 60 },
  A: { kind: 'current', si: 1 },
  V: { kind: 'voltage', si: 1 },
  s: { kind: 'time', si: 1 },
  deg: { kind: 'angle', si: Math.PI / 180 },
  kPa: { kind: 'pressure', si: 1e3 },
  'L/min': { kind: 'air_flow', si: 1e-3 / 60 },
  kW: { kind: 'power', si: 1e3 },
};

/** An amount of a result in the shop's units, with its unit; lengths as fine as a gauge reads them. */
export function shown(value: number, unit: string, units: UnitSystem): string {
  if (!Number.isFinite(value)) return '–';
  const scale = SCALES[unit];
  if (unit === 'mm') return fineLength(value, units);
  if (unit === 'degC' || unit === '°C') return formatAmount(value + 273.15, 'temperature', units);
  if (scale === undefined) return `${figures(value)}${unit === '' || unit === '-' ? '' : ` ${unit}`}`;
  return formatAmount(value * scale.si, scale.kind, units);
}

/** A length along the seam or a size that is bought: 1/2 in, 6.00 m. */
export function shownSize(millimetres: number, units: UnitSystem): string {
  return formatAmount(millimetres / 1000, 'length', units);
}

/** A chance in per cent, never rounded up to certainty. */
export function shownChance(share: number): string {
  return formatAmount(share, 'share', 'metric');
}

/** A band as `low to high` with one unit at its end. */
export function shownBand(low: number, high: number, unit: string, units: UnitSystem): string {
  const [first, last] = [shown(low, unit, units), shown(high, unit, units)];
  const tail = / [^\s]+$/u.exec(last)?.[0] ?? '';
  const start = tail !== '' && first.endsWith(tail) ? first.slice(0, -tail.length) : first;
  return `${start} to ${last}`;
}

function fineLength(millimetres: number, units: UnitSystem): string {
  const text = units === 'inch' ? (millimetres / 25.4).toFixed(2) : millimetres.toFixed(1);
  return `${Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−')} ${units === 'inch' ? 'in' : 'mm'}`;
}

/** At most four figures, without an exponent. */
export function figures(value: number): string {
  if (Math.abs(value) >= 1000) return Math.round(value).toLocaleString('en-US').replaceAll(',', '\u202f');
  return String(Number(value.toPrecision(Math.abs(value) < 1 ? 2 : 3)));
}
