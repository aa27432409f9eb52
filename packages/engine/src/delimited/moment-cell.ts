/** In which order day, month and year stand in a date that begins with neither a year nor a month's name. */
export type DateOrder = 'ymd' | 'dmy' | 'mdy';

const DAY = 86_400;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
/** Months that are cut otherwise in German, French and Spanish. */
const OTHER_MONTHS: Readonly<Record<string, number>> = {
  mai: 5,
  okt: 10,
  dez: 12,
  mrz: 3,
  fev: 2,
  avr: 4,
  ene: 1,
  abr: 4,
  ago: 8,
  dic: 12,
};

/** Days from 1970-01-01 to a day of the Gregorian calendar (H. Hinnant, days_from_civil, public domain). */
function daysTo(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

const isDigit = (byte: number | undefined): boolean => byte !== undefined && byte >= 48 && byte <= 57;

/** Walks over a cell; each step takes what it names or leaves the place as it is. */
class Walk {
  at: number;
  readonly bytes: Uint8Array;
  readonly to: number;
  /** Digits of the number that was taken last. */
  digits = 0;

  constructor(bytes: Uint8Array, from: number, to: number) {
    this.bytes = bytes;
    this.at = from;
    this.to = to;
  }

  peek(): number {
    return this.at < this.to ? this.bytes[this.at]! : 0;
  }

  number(): number {
    const from = this.at;
    let value = 0;
    while (this.at < this.to && isDigit(this.bytes[this.at])) {
      value = value * 10 + (this.bytes[this.at]! - 48);
      this.at += 1;
    }
    this.digits = this.at - from;
    return this.digits === 0 ? Number.NaN : value;
  }

  one(of: string): boolean {
    if (this.at < this.to && of.includes(String.fromCharCode(this.bytes[this.at]!))) {
      this.at += 1;
      return true;
    }
    return false;
  }

  spaces(): void {
    while (this.peek() === 32) this.at += 1;
  }

  letters(): string {
    let word = '';
    for (;;) {
      const byte = this.peek() | 32;
      if (byte < 97 || byte > 122) return word;
      word += String.fromCharCode(byte);
      this.at += 1;
    }
  }
}

function monthOf(word: string): number {
  const short = word.slice(0, 3);
  return MONTHS.indexOf(short) + 1 || (OTHER_MONTHS[short] ?? Number.NaN);
}

/** Days of a date; not a number where it is none. */
function takeDate(walk: Walk, order: DateOrder): number {
  const first = walk.number();
  const firstDigits = walk.digits;
  if (firstDigits === 8) return dayOf(Math.floor(first / 10_000), Math.floor(first / 100) % 100, first % 100);
  if (!walk.one('-/. ')) return Number.NaN;
  const word = walk.letters();
  const second = word === '' ? walk.number() : monthOf(word);
  if (!walk.one('-/. ') && !(word !== '' && walk.one(','))) return Number.NaN;
  walk.spaces();
  const third = walk.number();
  const thirdDigits = walk.digits;
  if (firstDigits === 4) return dayOf(first, second, third);
  const year = thirdDigits === 2 ? 2000 + third : third;
  if (word !== '') return dayOf(year, second, first);
  if (order === 'ymd' && thirdDigits === 2) return dayOf(2000 + first, second, third);
  return order === 'mdy' ? dayOf(year, first, second) : dayOf(year, second, first);
}

function dayOf(year: number, month: number, day: number): number {
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= 31 && year >= 1)) return Number.NaN;
  return daysTo(year, month, day);
}

/** Seconds of a time of day or of an elapsed time in parts; not a number where it is none. */
function takeTime(walk: Walk): number {
  let hours = walk.number();
  if (walk.digits === 6) {
    const compact = Math.floor(hours / 10_000) * 3600 + (Math.floor(hours / 100) % 100) * 60 + (hours % 100);
    return compact + takeFraction(walk, '.,');
  }
  if (!walk.one(':h')) return Number.NaN;
  let minutes = walk.number();
  let seconds = 0;
  if (walk.one(':')) {
    seconds = walk.number();
    seconds += takeFraction(walk, '.,:');
  } else if (walk.peek() === 46 || walk.peek() === 44) {
    // 03:25.5 is minutes and seconds
    seconds = minutes + takeFraction(walk, '.,');
    minutes = hours;
    hours = 0;
  }
  if (!(minutes < 60 && seconds < 61)) return Number.NaN;
  walk.spaces();
  const half = walk.peek() | 32;
  if (half === 97 || half === 112) {
    if (hours > 12) return Number.NaN;
    hours = (hours % 12) + (half === 112 ? 12 : 0);
    walk.at += 1;
    walk.one('.');
    if (!walk.one('mM')) return Number.NaN;
    walk.one('.');
  }
  return hours * 3600 + minutes * 60 + seconds;
}

function takeFraction(walk: Walk, marks: string): number {
  if (!walk.one(marks)) return 0;
  const value = walk.number();
  return value / 10 ** walk.digits;
}

/** Seconds east of Greenwich; not a number where what stands behind the time is no zone. */
function takeZone(walk: Walk): number {
  walk.spaces();
  if (walk.at === walk.to) return 0;
  const sign = walk.peek();
  if (sign === 43 || sign === 45) {
    walk.at += 1;
    const hours = walk.number();
    const compact = walk.digits === 4;
    const whole = compact ? Math.floor(hours / 100) : hours;
    const minutes = compact ? hours % 100 : walk.one(':') ? walk.number() : 0;
    return (sign === 45 ? -1 : 1) * (whole * 3600 + minutes * 60);
  }
  const word = walk.letters();
  return word === 'z' || word === 'utc' || word === 'gmt' ? 0 : Number.NaN;
}

/** What a moment is made of. */
export type MomentParts = 'date' | 'time' | 'both';

/**
 * Seconds of a moment as loggers write it: since 1970-01-01 where it has a date (in its zone where none is given), since
 * midnight where it has none. Not a number where the cell is not such a moment.
 */
export function readMoment(
  bytes: Uint8Array,
  from: number,
  to: number,
  parts: MomentParts,
  order: DateOrder,
): number {
  const walk = new Walk(bytes, from, to);
  walk.spaces();
  let seconds = 0;
  if (parts !== 'time') {
    seconds = takeDate(walk, order) * DAY;
    if (parts === 'both' && !walk.one('T_,') && walk.peek() !== 32) return Number.NaN;
    walk.one('T');
  }
  walk.spaces();
  if (parts !== 'date') {
    seconds += takeTime(walk);
    seconds -= takeZone(walk);
  }
  walk.spaces();
  return walk.at === walk.to ? seconds : Number.NaN;
}

const ZONED = /\d[:.,]\d+\s*(?:z|utc|gmt|[+-]\d{1,2}(?::?\d{2})?)\s*$/iu;

/** Which parts a moment has, and the order of its date, from some cells of a column; undefined where they are none or
 * its dates do not stand in the order given. */
export function guessMoment(
  cells: readonly string[],
  given?: DateOrder,
): { parts: MomentParts; order: DateOrder; zoned: boolean; sure: boolean } | undefined {
  if (cells.length === 0) return undefined;
  const encoded = cells.map((cell) => asciiOf(cell));
  const dated = cells.filter((cell) =>
    /^\s*\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|^\s*\d{1,2}[- ][a-zé]{3}|^\s*\d{8}[T _]/iu.test(cell),
  ).length;
  const timed = cells.filter((cell) => /\d:\d|[T _]\d{6}/u.test(cell)).length;
  const parts: MomentParts | undefined =
    dated > cells.length / 2
      ? timed > cells.length / 2
        ? 'both'
        : 'date'
      : timed > cells.length / 2
        ? 'time'
        : undefined;
  if (parts === undefined) return undefined;
  const dotted = cells.filter((cell) => /^\s*\d{1,2}\.\d{1,2}\./u.test(cell)).length > cells.length / 2;
  const read = (order: DateOrder): number =>
    encoded.filter((bytes) => Number.isFinite(readMoment(bytes, 0, bytes.length, parts, order))).length;
  const orders: readonly DateOrder[] = given
    ? [given]
    : dotted
      ? ['dmy', 'ymd', 'mdy']
      : ['dmy', 'mdy', 'ymd'];
  const counts = orders.map((order) => ({ order, count: read(order) }));
  const best = counts.reduce((a, b) => (b.count > a.count ? b : a));
  if (best.count < 0.6 * cells.length) return undefined;
  const rival = counts.some(({ order, count }) => order !== best.order && count === best.count);
  const yearFirst = parts === 'time' || cells.every((cell) => /^\s*(?:\d{4}|\d{1,2}[- ][a-z])/iu.test(cell));
  const zoned = cells.filter((cell) => ZONED.test(cell)).length > cells.length / 2;
  return { parts, order: best.order, zoned, sure: yearFirst || dotted || !rival };
}

/** Bytes of a text whose characters beyond ASCII do not matter. */
export function asciiOf(text: string): Uint8Array {
  return Uint8Array.from(text, (c) => Math.min(c.charCodeAt(0), 127));
}
