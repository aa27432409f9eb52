import type { AmountKind } from './amount.ts';
import { unitNamed } from './find-unit.ts';
import { formatDepth, formatInchLength, formatMetricLength } from './format-length.ts';
import { formatTime } from './format-time.ts';
import type { UnitSystem } from './quantity-kind.ts';
import { FOOT, INCH } from './si.ts';

/** How an amount is to be shown. */
export interface FormatOptions {
  /** Unit to show instead of the usual one, such as `kcmil` for a cable or `thou` for a fine reading. */
  readonly unit?: string;
  /** Decimals in that unit instead of four figures [-]. */
  readonly decimals?: number;
}

/** A unit in which amounts are shown. */
interface ShownUnit {
  readonly unit: string;
  /** The amount in that unit from its SI value. */
  readonly of: (value: number) => number;
  /** The SI value of a number of that unit. */
  readonly si: (shown: number) => number;
  /** Decimals that a shop's gauge can tell. */
  readonly decimals: number;
  /** Whether one decimal more is shown below 10. */
  readonly finerBelowTen?: boolean;
  /** Whether zeros at the end are dropped: a tenth is shown only where there is one. */
  readonly zeroDropped?: boolean;
  /** Whether no more than three figures are shown: nobody measures more of it. */
  readonly threeFigures?: boolean;
}

/** A unit that documents may state, with the decimals to show. */
function shownIn(name: string, decimals: number, more: Partial<ShownUnit> = {}): ShownUnit {
  const { scale } = unitNamed(name);
  return {
    unit: name,
    of: (value) => scale.fromSi(value),
    si: (shown) => scale.toSi(shown),
    decimals,
    ...more,
  };
}

/** A unit that only results have. */
function shownAs(unit: string, size: number, decimals: number, more: Partial<ShownUnit> = {}): ShownUnit {
  return { unit, of: (value) => value / size, si: (shown) => shown * size, decimals, ...more };
}

function both(shown: ShownUnit): Readonly<Record<UnitSystem, ShownUnit>> {
  return { inch: shown, metric: shown };
}

const GAUGED = { finerBelowTen: true, zeroDropped: true } as const;
const POUND = 0.45359237;

/** Units by kind; voltages and powers of a joint have smaller ones below. */
const SHOWN: Readonly<Record<Exclude<AmountKind, 'bore'>, Readonly<Record<UnitSystem, ShownUnit>>>> = {
  length: { inch: shownIn('in', 3), metric: shownIn('mm', 1) },
  depth: { inch: shownIn('in', 2), metric: shownIn('mm', 1) },
  // a sixteenth of an inch would not tell a reading from its limit
  reading: { inch: shownIn('in', 3), metric: shownIn('mm', 1) },
  spread: { inch: shownIn('in', 4), metric: shownIn('mm', 3) },
  time: both(shownIn('s', 1)),
  share: both(shownIn('%', 1, { zeroDropped: true })),
  speed: { inch: shownIn('in/min', 1, { zeroDropped: true }), metric: shownIn('mm/min', 0, GAUGED) },
  pressure: { inch: shownIn('psi', 0, GAUGED), metric: shownIn('bar', 1) },
  current: both(shownIn('A', 0, GAUGED)),
  voltage: both(shownIn('V', 1)),
  angle: both(shownIn('deg', 1, { zeroDropped: true })),
  area: { inch: shownIn('in2', 3), metric: shownIn('mm2', 1, { zeroDropped: true }) },
  temperature: { inch: shownIn('°F', 0), metric: shownIn('°C', 0) },
  air_flow: { inch: shownIn('scfm', 1, { zeroDropped: true }), metric: shownIn('L/min', 0, GAUGED) },
  power: both(shownIn('kW', 1)),
  volume: { inch: shownIn('gal', 0, GAUGED), metric: shownIn('L', 0, GAUGED) },
  resistance: both(shownIn('mohm', 3)),
  ventilation: {
    inch: shownAs('cfm', FOOT ** 3 / 60, 0, { threeFigures: true }),
    metric: shownAs('m3/min', 1 / 60, 1, { zeroDropped: true, threeFigures: true }),
  },
  room_volume: {
    inch: shownAs('ft3', FOOT ** 3, 0, { threeFigures: true }),
    metric: shownAs('m3', 1, 1, { zeroDropped: true, threeFigures: true }),
  },
  density: {
    inch: shownAs('lb/in³', POUND / INCH ** 3, 3),
    metric: shownAs('kg/m³', 1, 0),
  },
  mass: { inch: shownAs('lb', POUND, 1), metric: shownAs('kg', 1, 1) },
  energy: both(shownAs('kJ', 1e3, 0)),
  heat_per_length: { inch: shownAs('kJ/in', 1e3 / INCH, 1), metric: shownAs('kJ/mm', 1e6, 2) },
  seam_place: { inch: shownIn('in', 1), metric: shownIn('m', 3) },
  sound: both(shownAs('dBA', 1, 1)),
  temperature_difference: { inch: shownAs('°F', 5 / 9, 0), metric: shownAs('°C', 1, 0) },
};

const MILLIVOLTS = shownIn('mV', 0);
const WATTS = shownIn('W', 0);
/** From here on a volume is that of a room, not of a receiver [m3]. */
const ROOM_FROM = 20;
const MEGAJOULES = shownAs('MJ', 1e6, 1);

/** The unit for an amount of this size: a joint makes a few watts and millivolts, a lead kilowatts and volts. */
function shownUnit(value: number, kind: Exclude<AmountKind, 'bore'>, system: UnitSystem): ShownUnit {
  const size = Math.abs(value);
  if (kind === 'voltage' && size > 0 && size < 0.9995) return MILLIVOLTS;
  if (kind === 'power' && size < 999.5) return WATTS;
  if (kind === 'energy' && size >= 9.9995e6) return MEGAJOULES;
  if (kind === 'volume' && size >= ROOM_FROM) return SHOWN.room_volume[system];
  return SHOWN[kind][system];
}

const SHOWN_AS: Readonly<Record<string, string>> = { in2: 'in²', mm2: 'mm²' };

function withUnit(number: string, unit: string): string {
  return unit === 'deg' ? `${number}°` : `${number} ${SHOWN_AS[unit] ?? unit}`;
}

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

function inShownUnit(value: number, shown: ShownUnit): string {
  const { unit, of, decimals, finerBelowTen, zeroDropped, threeFigures } = shown;
  const amount = threeFigures ? Number(of(value).toPrecision(3)) : of(value);
  const text = fixed(amount, finerBelowTen && Math.abs(amount) < 9.95 ? decimals + 1 : decimals);
  const number = zeroDropped ? text.replace(/\.0+$/u, '') : text;
  return withUnit(number, unit);
}

/** Hoses are sold by the inch, so a metric shop reads both. */
function formatBore(value: number, system: UnitSystem): string {
  const inches = formatInchLength(value);
  return system === 'inch' ? inches : `${formatMetricLength(value)} (${inches})`;
}

/** A mass of metal, in no more than three figures below a hundred: 0.35 kg, 14.0 kg, 250 kg. */
function formatMass(value: number, system: UnitSystem): string {
  const { of, unit } = SHOWN.mass[system];
  const size = Math.abs(of(value));
  const decimals = size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2;
  return withUnit(fixed(of(value), size === 0 ? 0 : decimals), unit);
}

/** From here on a temperature is told in steps of five degrees [°F]. */
const FIVES_FROM = 100;
/** How far off a whole degree a temperature may be to have been meant as one [°F]. */
const MEANT_DEGREE = 1e-6;

/**
 * Degrees Fahrenheit; what comes of a calculation goes to the nearest five. Whole fives of degrees Celsius are whole degrees
 * Fahrenheit, and stay what they are: most often somebody stated them as a limit.
 */
function formatFahrenheit(kelvins: number): string {
  const fahrenheit = SHOWN.temperature.inch.of(kelvins);
  const isMeant = Math.abs(fahrenheit - Math.round(fahrenheit)) < MEANT_DEGREE;
  const step = isMeant || fahrenheit < FIVES_FROM ? 1 : 5;
  return withUnit(fixed(Math.round(fahrenheit / step) * step, 0), '°F');
}

/** Percent; never rounded up to certainty, because 99.99 % is not 100 %. */
function formatShare(share: number): string {
  const percent = share * 100;
  if (percent > 99 && percent < 100) return `${Math.floor(percent * 100) / 100} %`;
  return `${fixed(percent, 1).replace(/\.0$/, '')} %`;
}

/**
 * Writes an amount for people, rounded to what a shop can read off: the one writer of page, paper and terminal.
 *
 * Inch lengths keep a sixteenth that was meant; others go to 1/16 in below 2 in (1/64 below a quarter, thousandths below
 * 1/16 in), 1/8 in below 10 in, 1/4 in below 2 ft, then to feet and whole inches. Metric ones go to 0.01 mm below 1 mm, 0.1 mm
 * below 100 mm, 1 mm below 1 m and 0.01 m above. A `depth` is read to 0.1 mm or 0.01 in. From 100 °F on, degrees that come
 * out broken go to the nearest five. A unit asked for by name is written with four figures.
 *
 * @param value - amount in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - what it measures [text], one of the AmountKind names
 * @param system - units to show [text], inch or metric
 * @param options - unit to show instead of the usual one [record], a spelling of unitsOf(kind), with decimals where four figures would not do
 * @returns amount with its unit [text]
 * @source common practice, no source
 * @example
 * formatAmount(0.0318, 'length', 'inch') // => "1 1/4 in"
 * formatAmount(0.3, 'length', 'inch') // => "11 3/4 in"
 * formatAmount(523.15, 'temperature', 'inch') // => "482 °F"
 * formatAmount(525.04, 'temperature', 'inch') // => "485 °F"
 * formatAmount(0.0118, 'depth', 'inch') // => "0.46 in"
 * formatAmount(0.0118, 'reading', 'inch') // => "0.465 in"
 * formatAmount(3.4123, 'seam_place', 'metric') // => "3.412 m"
 * formatAmount(12.7, 'mass', 'inch') // => "28.0 lb"
 * formatAmount(0.01905, 'bore', 'metric') // => "19.1 mm (3/4 in)"
 * formatAmount(7850, 'density', 'inch') // => "0.284 lb/in³"
 * formatAmount(0.4501, 'voltage', 'inch', { unit: 'mV', decimals: 0 }) // => "450 mV"
 */
export function formatAmount(
  value: number,
  kind: AmountKind,
  system: UnitSystem,
  options: FormatOptions = {},
): string {
  if (!Number.isFinite(value)) throw new RangeError(`an amount must be finite, not ${value}`);
  if (options.unit !== undefined) {
    const unit = unitNamed(options.unit);
    if (unit.kind !== kind) throw new RangeError(`${options.unit} is no unit of ${kind}`);
    const shown = unit.scale.fromSi(value);
    const { decimals } = options;
    return withUnit(
      decimals === undefined ? String(Number(shown.toPrecision(4))) : fixed(shown, decimals),
      options.unit,
    );
  }
  if (kind === 'length') return system === 'inch' ? formatInchLength(value) : formatMetricLength(value);
  if (kind === 'bore') return formatBore(value, system);
  if (kind === 'depth') return formatDepth(value, system);
  if (kind === 'time') return formatTime(value);
  if (kind === 'share') return formatShare(value);
  if (kind === 'mass') return formatMass(value, system);
  if (kind === 'temperature' && system === 'inch') return formatFahrenheit(value);
  return inShownUnit(value, shownUnit(value, kind, system));
}

/**
 * Value of an amount in the unit in which readers of these units read it, for axes and tables that name the unit once.
 *
 * @param value - amount in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - what it measures [text], one of the AmountKind names but `bore`
 * @param system - units of the reader [text], inch or metric
 * @returns the number in that unit [inch or millimetre for lengths, else the unit that formatAmount shows]
 * @source none: bookkeeping
 * @example
 * shownNumber(0.0127, 'depth', 'inch') // => 0.5
 * shownNumber(0.0127, 'depth', 'metric') // => 12.7
 */
export function shownNumber(value: number, kind: Exclude<AmountKind, 'bore'>, system: UnitSystem): number {
  return SHOWN[kind][system].of(value);
}

/**
 * Amount of a number that stands in the unit in which readers of these units read it.
 *
 * @param shown - the number [unit that formatAmount shows], any finite number
 * @param kind - what it measures [text], one of the AmountKind names but `bore`
 * @param system - units of the reader [text], inch or metric
 * @returns the amount in the SI unit of its kind [SI unit of the kind]
 * @source none: bookkeeping
 * @example
 * siOfShown(0.5, 'depth', 'inch') // => 0.0127
 */
export function siOfShown(shown: number, kind: Exclude<AmountKind, 'bore'>, system: UnitSystem): number {
  return SHOWN[kind][system].si(shown);
}

/** More decimals than any shop reads [-]. */
const DECIMALS_MOST = 6;

/**
 * Writes two amounts that are held against each other, with enough figures to tell them apart.
 *
 * @param first - the one amount in the SI unit of its kind [SI unit of the kind], any finite number
 * @param second - the other [SI unit of the kind], any finite number
 * @param kind - what both measure [text], one of the AmountKind names
 * @param system - units to show [text], inch or metric
 * @param options - unit to show instead of the usual one [record], as for formatAmount
 * @returns the two amounts with their unit [two texts]
 * @source common practice, no source
 * @example
 * formatApart(549600, 551600, 'pressure', 'metric') // => ["5.50 bar","5.52 bar"]
 * formatApart(620000, 551600, 'pressure', 'metric') // => ["6.2 bar","5.5 bar"]
 */
export function formatApart(
  first: number,
  second: number,
  kind: AmountKind,
  system: UnitSystem,
  options: FormatOptions = {},
): readonly [string, string] {
  const usual = [
    formatAmount(first, kind, system, options),
    formatAmount(second, kind, system, options),
  ] as const;
  if (usual[0] !== usual[1] || Math.abs(first - second) <= 1e-9 * Math.abs(second)) return usual;
  const { unit, of, decimals } =
    options.unit === undefined
      ? shownUnit(second, kind === 'bore' ? 'length' : kind, system)
      : shownIn(options.unit, options.decimals ?? 0);
  for (let more = decimals; more <= DECIMALS_MOST; more += 1) {
    const [one, other] = [fixed(of(first), more), fixed(of(second), more)];
    if (one !== other) return [withUnit(one, unit), withUnit(other, unit)];
  }
  return usual;
}

/**
 * Writes a band as `low to high` with one unit at its end.
 *
 * @param low - lower end in the SI unit of its kind [SI unit of the kind], any finite number
 * @param high - upper end [SI unit of the kind], any finite number
 * @param kind - what both measure [text], one of the AmountKind names
 * @param system - units to show [text], inch or metric
 * @returns the band [text]; one amount where both ends read the same
 * @source common practice, no source
 * @example
 * formatBand(0.01205, 0.01562, 'depth', 'inch') // => "0.47 to 0.61 in"
 * formatBand(0.01205, 0.01562, 'depth', 'metric') // => "12.1 to 15.6 mm"
 */
export function formatBand(low: number, high: number, kind: AmountKind, system: UnitSystem): string {
  return bandText(formatAmount(low, kind, system), formatAmount(high, kind, system));
}

/** Two written amounts as a band, with a unit that both have at its end alone; one of them where they read the same. */
export function bandText(first: string, last: string): string {
  if (first === last) return last;
  const tail = / \S+$/u.exec(last)?.[0] ?? '';
  // `1 min 30 s` has a unit of its own before the last one
  const isPlain = tail !== '' && /^[−\-\d./ ]+$/u.test(last.slice(0, -tail.length));
  const start = isPlain && first.endsWith(tail) ? first.slice(0, -tail.length) : first;
  return `${start} to ${last}`;
}
