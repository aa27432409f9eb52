import { unitNamed } from './find-unit.ts';
import { formatInchLength, formatMetricLength } from './format-length.ts';
import { formatTime } from './format-time.ts';
import type { QuantityKind, UnitSystem } from './quantity-kind.ts';

/** How an amount is to be shown. */
export interface FormatOptions {
  /** Unit to show instead of the usual one, such as `kcmil` for a cable or `thou` for a fine reading. */
  readonly unit?: string;
}

type PlainKind = Exclude<QuantityKind, 'length' | 'time' | 'share'>;

const SHOWN_UNITS: Readonly<Record<PlainKind, Readonly<Record<UnitSystem, string>>>> = {
  speed: { inch: 'in/min', metric: 'mm/min' },
  pressure: { inch: 'psi', metric: 'bar' },
  current: { inch: 'A', metric: 'A' },
  voltage: { inch: 'V', metric: 'V' },
  angle: { inch: 'deg', metric: 'deg' },
  area: { inch: 'in2', metric: 'mm2' },
  temperature: { inch: '°F', metric: '°C' },
  air_flow: { inch: 'scfm', metric: 'L/min' },
  power: { inch: 'kW', metric: 'kW' },
  volume: { inch: 'gal', metric: 'L' },
  resistance: { inch: 'mohm', metric: 'mohm' },
};

/** Decimals that make sense in a unit, where not one: what a shop's gauge of it can tell. Below 10, one at least. */
const DECIMALS: Readonly<Record<string, number>> = {
  'mm/min': 0,
  psi: 0,
  A: 0,
  'L/min': 0,
  in2: 3,
  L: 0,
  gal: 0,
  mohm: 3,
  '°C': 0,
  '°F': 0,
};

/** Units that are never shown in tenths. */
const WHOLE_ALWAYS: ReadonlySet<string> = new Set(['°C', '°F']);

/** Units whose last zero is dropped: a tenth is shown only where there is one. */
const ZERO_DROPPED: ReadonlySet<string> = new Set([
  'in/min',
  'mm/min',
  'psi',
  'A',
  'deg',
  'mm2',
  'scfm',
  'L/min',
  'L',
  'gal',
]);

const SHOWN_AS: Readonly<Record<string, string>> = { in2: 'in²', mm2: 'mm²' };

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

function inShownUnit(value: number, name: string): string {
  const amount = unitNamed(name).scale.fromSi(value);
  const whole = DECIMALS[name] === 0 && (WHOLE_ALWAYS.has(name) || Math.abs(amount) >= 9.95);
  const text = fixed(amount, whole ? 0 : DECIMALS[name] || 1);
  const number = ZERO_DROPPED.has(name) ? text.replace(/\.0$/, '') : text;
  return name === 'deg' ? `${number}°` : `${number} ${SHOWN_AS[name] ?? name}`;
}

/** Percent; never rounded up to certainty, because 99.99 % is not 100 %. */
function formatShare(share: number): string {
  const percent = share * 100;
  if (percent > 99 && percent < 100) return `${Math.floor(percent * 100) / 100} %`;
  return `${fixed(percent, 1).replace(/\.0$/, '')} %`;
}

/**
 * Writes an amount for people, rounded to what a shop can read off.
 *
 * Inch lengths go to the nearest 1/16 in (thousandths below 1/16 in, feet and inches from 10 ft on); metric ones
 * to 0.01 mm below 1 mm, 0.1 mm below 100 mm, 1 mm below 1 m and 0.01 m above. A unit asked for by name is
 * written with four figures.
 *
 * @param value - amount in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - kind of quantity [text], one of the QuantityKind names
 * @param system - units to show [text], inch or metric
 * @param options - unit to show instead of the usual one [record], a spelling of unitsOf(kind)
 * @returns amount with its unit [text]
 * @source common practice, no source
 * @example
 * formatAmount(0.0318, 'length', 'inch') // => "1 1/4 in"
 */
export function formatAmount(
  value: number,
  kind: QuantityKind,
  system: UnitSystem,
  options: FormatOptions = {},
): string {
  if (!Number.isFinite(value)) throw new RangeError(`an amount must be finite, not ${value}`);
  if (options.unit !== undefined) {
    const unit = unitNamed(options.unit);
    if (unit.kind !== kind) throw new RangeError(`${options.unit} is no unit of ${kind}`);
    return `${Number(unit.scale.fromSi(value).toPrecision(4))} ${options.unit}`;
  }
  if (kind === 'length') return system === 'inch' ? formatInchLength(value) : formatMetricLength(value);
  if (kind === 'time') return formatTime(value);
  if (kind === 'share') return formatShare(value);
  return inShownUnit(value, SHOWN_UNITS[kind][system]);
}
