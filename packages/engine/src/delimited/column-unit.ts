import { type QuantityKind, unitOf } from '../quantity/index.ts';

/** The unit of a column: a number of it is `(number + offset) * top / bottom` in SI. */
export interface ColumnUnit {
  readonly kind: QuantityKind;
  /** As it is written in the reading, such as `0.1 V`. */
  readonly name: string;
  /** Numerator of its size [SI unit of the kind]. */
  readonly top: number;
  /** Denominator of its size [-]. */
  readonly bottom: number;
  /** Reading of zero in the SI unit [the unit]. */
  readonly offset: number;
}

/** Units of loggers' clocks that nobody writes on a job. */
const CLOCK_UNITS: Readonly<Record<string, readonly [name: string, top: number, bottom: number]>> = {
  us: ['us', 1, 1e6],
  µs: ['us', 1, 1e6],
  μs: ['us', 1, 1e6],
  microseconds: ['us', 1, 1e6],
  ns: ['ns', 1, 1e9],
  nanoseconds: ['ns', 1, 1e9],
  d: ['d', 86_400, 1],
  days: ['d', 86_400, 1],
};

/** Units in other words of the trade. */
const OTHER_WORDS: Readonly<Record<string, string>> = {
  sek: 's',
  sekunden: 's',
  secondes: 's',
  segundos: 's',
  secondi: 's',
  std: 'h',
  stunden: 'h',
  heures: 'h',
  minuten: 'min',
  zoll: 'in',
  pouces: 'in',
  msec: 'ms',
  'mm/sek': 'mm/s',
  'zoll/min': 'in/min',
  'nl/min': 'L/min',
  slpm: 'L/min',
  'ltr/min': 'L/min',
  'kg/cm²': 'kg/cm2',
};

const NUMBER = String.raw`\d+(?:[.,]\d+)?(?:e[-+]?\d+)?`;
const BEFORE = new RegExp(`^[x×*]? ?(${NUMBER})(?: ?/ ?(${NUMBER}))? ?[x×*]? ?(\\D.*)$`, 'iu');
const BEHIND = new RegExp(`^(.*?) ?[x×*] ?(${NUMBER})(?: ?/ ?(${NUMBER}))?$`, 'iu');
const TENTHS = /^(tenths?|hundredths?|zehntel|hundertstel)[ -](?:of (?:an? )?)?(.+)$/iu;

function plainUnit(text: string): ColumnUnit | undefined {
  const clock = CLOCK_UNITS[text] ?? CLOCK_UNITS[text.toLowerCase()];
  if (clock) return { kind: 'time', name: clock[0], top: clock[1], bottom: clock[2], offset: 0 };
  return unitOf(text) ?? unitOf(OTHER_WORDS[text.toLowerCase()] ?? '');
}

function times(
  unit: ColumnUnit | undefined,
  top: string,
  bottom: string | undefined,
): ColumnUnit | undefined {
  if (unit?.offset !== 0) return undefined;
  const factor = ratioOf(top);
  const under = ratioOf(bottom ?? '1');
  if (factor.top === 0 || under.top === 0) return undefined;
  const [up, down] = [factor.top * under.bottom, factor.bottom * under.top];
  return { ...unit, name: `${up / down} ${unit.name}`, top: unit.top * up, bottom: unit.bottom * down };
}

/** A decimal as a ratio of whole numbers, so that 412 tenths are exactly 41.2. */
function ratioOf(text: string): { top: number; bottom: number } {
  const plain = text.replace(',', '.');
  const decimals = /\.(\d+)/.exec(plain)?.[1]?.length ?? 0;
  const bottom = 10 ** decimals;
  return { top: Math.round(Number(plain) * bottom), bottom };
}

/** Reads a unit as it stands in a header or a unit row: `V`, `[0.1 V]`, `1/10 mm`, `V x 0,1`, `tenths of a volt`. */
export function readColumnUnit(text: string): ColumnUnit | undefined {
  const bare = text
    .trim()
    .replace(/^[[({<]\s*|\s*[\])}>]$/gu, '')
    .trim();
  if (bare === '' || bare.length > 30) return undefined;
  const plain = plainUnit(bare);
  if (plain) return plain;
  const before = BEFORE.exec(bare);
  if (before) return times(plainUnit(before[3]!.trim()), before[1]!, before[2]);
  const behind = BEHIND.exec(bare);
  if (behind) return times(plainUnit(behind[1]!.trim()), behind[2]!, behind[3]);
  const part = TENTHS.exec(bare);
  return part
    ? times(plainUnit(part[2]!.trim()), /^[tz]/iu.test(part[1]!) ? '0.1' : '0.01', undefined)
    : undefined;
}
