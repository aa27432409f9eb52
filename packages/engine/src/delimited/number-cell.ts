/** Marks in the numbers of a file. */
export interface NumberMarks {
  readonly decimal: '.' | ',';
  /** The mark between thousands; empty where there is none. */
  readonly thousands: '' | '.' | ',' | ' ' | "'";
}

/** A cell that should hold a number. */
export type NumberReading =
  | { readonly kind: 'number'; readonly value: number }
  /** Empty, or a word for no value. */
  | { readonly kind: 'missing' }
  | { readonly kind: 'infinite' }
  | { readonly kind: 'unreadable' };

const MISSING =
  /^(?:|nan|-nan|1\.#(?:qnan|ind)0*|null|none|nil|n\/?a|#n\/a|#value!|#wert!|-+|\.+|\?+|\*+|x|err(?:or)?|fehler|missing|invalid|void|bad|<null>)$/i;
const INFINITE = /^[-+]?(?:inf(?:inity)?|∞|1\.#inf0*|ol|o\.l|over(?:load|range|flow)?)$/i;
const PLAIN = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d{1,3})?$/i;

/** Reads one cell by the marks of its file. A number with its unit or a sign of currency behind it is none. */
export function readNumberCell(cell: string, { decimal, thousands }: NumberMarks): NumberReading {
  let text = cell.trim().replaceAll('\u2212', '-');
  if (MISSING.test(text)) return { kind: 'missing' };
  if (INFINITE.test(text)) return { kind: 'infinite' };
  if (thousands !== '') text = withoutGroups(text, decimal, thousands);
  if (decimal === ',') text = text.includes('.') ? 'x' : text.replace(',', '.');
  if (!PLAIN.test(text)) return { kind: 'unreadable' };
  const value = Number(text);
  return Number.isFinite(value) ? { kind: 'number', value } : { kind: 'infinite' };
}

/** Takes the marks out of a number that is grouped by threes; any other text stays as it is. */
function withoutGroups(text: string, decimal: string, thousands: string): string {
  const plain = thousands === ' ' ? text.replace(/[\u00a0\u2009\u202f]/gu, ' ') : text.replaceAll('’', "'");
  if (!plain.includes(thousands)) return plain;
  const [whole = '', ...rest] = plain.split(decimal);
  const groups = whole.split(thousands);
  const grouped =
    /^[-+]?\d{1,3}$/.test(groups[0]!) && groups.slice(1).every((group) => /^\d{3}$/.test(group));
  return grouped ? [groups.join(''), ...rest].join(decimal) : text;
}

/** Decimal sign and thousands mark, and why. */
export interface GuessedMarks {
  readonly marks: NumberMarks;
  readonly says: string;
  readonly sure: boolean;
}

const DECIMAL_ONLY: Readonly<Record<'.' | ',', RegExp>> = {
  // a group of three could be thousands; one or two, four and more, or a zero before it could not
  '.': /^[-+]?(?:\d*\.(?:\d{1,2}|\d{4,})|0+\.\d+|\d{4,}\.\d+|\.\d+|\d+\.\d*e[-+]?\d+|\d{1,3}(?:,\d{3})+\.\d+)$/i,
  ',': /^[-+]?(?:\d*,(?:\d{1,2}|\d{4,})|0+,\d+|\d{4,},\d+|,\d+|\d+,\d*e[-+]?\d+|\d{1,3}(?:\.\d{3})+,\d+)$/i,
};
const EITHER: Readonly<Record<'.' | ',', RegExp>> = {
  '.': /^[-+]?\d{1,3}\.\d{3}$/,
  ',': /^[-+]?\d{1,3},\d{3}$/,
};

/** Finds the marks from cells of the head. `delimiter` cannot be a mark of an unquoted number. */
export function guessMarks(
  cells: readonly string[],
  given: { readonly [M in keyof NumberMarks]?: NumberMarks[M] | undefined } = {},
): GuessedMarks {
  const numbers = cells
    .map((cell) => cell.trim())
    .filter((cell) => /^[-+]?[\d.,]/.test(cell) && /^[-+\d.,' ’\u00a0\u2009\u202fe]+$/i.test(cell));
  const count = (pattern: RegExp): number => numbers.filter((cell) => pattern.test(cell)).length;
  const [points, commas] = [count(DECIMAL_ONLY['.']), count(DECIMAL_ONLY[','])];
  const [point3, comma3] = [count(EITHER['.']), count(EITHER[','])];
  const decimal =
    given.decimal ??
    (commas > points || (commas === points && comma3 > 0 && point3 === 0 && points === 0) ? ',' : '.');
  const other = decimal === ',' ? '.' : ',';
  const grouped = (mark: string): number =>
    count(new RegExp(`^[-+]?\\d{1,3}(?:[${mark}]\\d{3})+(?:\\${decimal}\\d+)?$`));
  const space = '\u0020\u00a0\u2009\u202f';
  const thousands =
    given.thousands ?? (grouped(other) > 0 ? other : grouped(space) > 0 ? ' ' : grouped("'’") > 0 ? "'" : '');
  const marks: NumberMarks = { decimal, thousands };
  const [clear, doubtful] = decimal === ',' ? [commas, comma3] : [points, point3];
  const against = decimal === ',' ? points : commas;
  const name = decimal === ',' ? 'comma' : 'point';
  const grouping =
    thousands === '' ? '' : `, ${thousands === ' ' ? 'a space' : `"${thousands}"`} between thousands`;
  if (given.decimal !== undefined) return { marks, says: `decimal ${name} as given${grouping}`, sure: true };
  if (clear > 0) {
    const words = against > 0 ? `, ${against} the other way` : '';
    return {
      marks,
      says: `${clear} number${clear === 1 ? '' : 's'} with a decimal ${name}${words}${grouping}`,
      sure: against === 0,
    };
  }
  if (doubtful > 0) {
    return {
      marks,
      says: `${doubtful} numbers such as ${numbers.find((cell) => EITHER[decimal].test(cell))} could have a decimal ${name} or thousands; taken as decimals`,
      sure: false,
    };
  }
  return { marks, says: `no number has decimals${grouping}`, sure: true };
}
