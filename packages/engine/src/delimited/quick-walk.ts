import { readMoment } from './moment-cell.ts';
import type { CutMarks } from './record-cutter.ts';
import type { TableReading } from './table-reading.ts';
import type { TableRows } from './table-rows.ts';

const [LF, CR, SPACE, MINUS, PLUS, ZERO] = [10, 13, 32, 45, 43, 48];
const POWERS = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/** What is done with a cell: a kind of 0 is passed over. */
const NUMBER = 1;
const MOMENT = 2;

/** Reads rows that are as expected straight from their bytes, without a text for any cell. */
export class QuickWalk {
  readonly #rows: TableRows;
  readonly #marks: CutMarks;
  readonly #decimal: number;
  readonly #kinds: Uint8Array;
  /** Column to which a cell goes, by its place. */
  readonly #slots: Int32Array;

  constructor({ columns, marks }: TableReading, rows: TableRows, by: CutMarks) {
    this.#rows = rows;
    this.#marks = by;
    this.#decimal = marks.decimal === ',' ? 44 : 46;
    this.#kinds = new Uint8Array(columns.length);
    this.#slots = new Int32Array(columns.length);
    rows.columns.forEach(({ index, column }, slot) => {
      this.#kinds[index] = column.holds === 'number' ? NUMBER : MOMENT;
      this.#slots[index] = slot;
    });
  }

  /** Walks over whole rows; gives the place of the first that is not as expected, or that has no room. */
  walk(bytes: Uint8Array, begin: number, limit: number): number {
    const { columns, rows, lines } = this.#rows;
    const [kinds, slots, decimal] = [this.#kinds, this.#slots, this.#decimal];
    const { delimiter, quote, eol, repeated } = this.#marks;
    const width = kinds.length;
    const room = rows.length;
    const stores = columns.map(({ values }) => values);
    const moments = columns.map(({ column }) => column.moment);
    const skipsSpace = delimiter !== SPACE;
    let { filled, row, line } = this.#rows;
    let at = begin;
    while (at < limit && filled < room) {
      const start = at;
      let good = true;
      if (repeated) while (bytes[at] === delimiter) at += 1;
      for (let index = 0; good && index < width; index += 1) {
        const kind = kinds[index]!;
        let c = bytes[at]!;
        if (kind === NUMBER) {
          if (skipsSpace) while (c === SPACE) c = bytes[++at]!;
          let negative = false;
          if (c === MINUS) {
            negative = true;
            c = bytes[++at]!;
          } else if (c === PLUS) c = bytes[++at]!;
          const first = at;
          let mantissa = 0;
          let digit = c - ZERO;
          while (digit >= 0 && digit <= 9) {
            mantissa = mantissa * 10 + digit;
            c = bytes[++at]!;
            digit = c - ZERO;
          }
          let digits = at - first;
          let power = 0;
          if (c === decimal) {
            c = bytes[++at]!;
            const point = at;
            digit = c - ZERO;
            while (digit >= 0 && digit <= 9) {
              mantissa = mantissa * 10 + digit;
              c = bytes[++at]!;
              digit = c - ZERO;
            }
            power = at - point;
            digits += power;
          }
          // beyond 2^53 the product would be rounded twice
          if (digits === 0 || digits > 16 || mantissa > 9007199254740991) {
            good = false;
            break;
          }
          if (skipsSpace) while (c === SPACE) c = bytes[++at]!;
          const value = power === 0 ? mantissa : mantissa / POWERS[power]!;
          stores[slots[index]!]![filled] = negative ? -value : value;
        } else if (kind === MOMENT) {
          if (c === quote) {
            good = false;
            break;
          }
          const from = at;
          while (c !== delimiter && c !== eol) c = bytes[++at]!;
          const slot = slots[index]!;
          const { parts, order } = moments[slot]!;
          const to = bytes[at - 1] === CR ? at - 1 : at;
          const value = readMoment(bytes, from, to, parts, order);
          if (Number.isNaN(value)) {
            good = false;
            break;
          }
          stores[slot]![filled] = value;
        } else {
          if (c === quote || (skipsSpace && c === SPACE)) {
            good = false;
            break;
          }
          while (c !== delimiter && c !== eol) c = bytes[++at]!;
        }
        if (index < width - 1) {
          if (c !== delimiter) good = false;
          at += 1;
          if (repeated) while (bytes[at] === delimiter) at += 1;
        } else {
          if (repeated) while (bytes[at] === delimiter) at += 1;
          else if (c === delimiter) at += 1;
          if (bytes[at] === CR && eol === LF) at += 1;
          if (bytes[at] !== eol) good = false;
          at += 1;
        }
      }
      if (!good) {
        at = start;
        break;
      }
      row += 1;
      rows[filled] = row;
      lines[filled] = line;
      line += 1;
      filled += 1;
    }
    this.#rows.filled = filled;
    this.#rows.row = row;
    this.#rows.line = line;
    return at;
  }
}
