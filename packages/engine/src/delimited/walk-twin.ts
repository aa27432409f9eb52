import { readMoment } from './moment-cell.ts';
import type { ColumnScale } from './planned-column.ts';
import { type CellsOfRow, cellsOfRow, MOMENT, NUMBER, type QuickWalk } from './quick-walk.ts';
import type { CutMarks } from './record-cutter.ts';
import type { TableReading } from './table-reading.ts';
import type { TableRows } from './table-rows.ts';

const [LF, CR, SPACE, MINUS, PLUS, ZERO] = [10, 13, 32, 45, 43, 48];
const POWERS = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/** The quick walk in TypeScript, where WebAssembly does not run. */
export class WalkTwin implements QuickWalk {
  readonly #rows: TableRows;
  readonly #marks: CutMarks;
  readonly #cells: CellsOfRow;
  #bytes: Uint8Array = new Uint8Array(0);

  constructor(reading: TableReading, rows: TableRows, by: CutMarks) {
    this.#rows = rows;
    this.#marks = by;
    this.#cells = cellsOfRow(reading, rows);
  }

  take(bytes: Uint8Array): void {
    this.#bytes = bytes;
  }

  walk(begin: number): number {
    const { columns, rows } = this.#rows;
    const { kinds, slots, decimal } = this.#cells;
    const { delimiter, quote, eol, repeated } = this.#marks;
    const bytes = this.#bytes;
    const limit = bytes.length;
    const width = kinds.length;
    const room = rows.length;
    const stores = columns.map(({ values }) => values);
    const scaled = (name: keyof ColumnScale): Float64Array =>
      Float64Array.from(columns, ({ scale }) => scale[name]);
    const [tops, bottoms, offsets] = [scaled('top'), scaled('bottom'), scaled('offset')];
    const [leasts, mosts] = [scaled('least'), scaled('most')];
    const moments = columns.map(({ column }) => column.moment);
    const skipsSpace = delimiter !== SPACE;
    let { filled } = this.#rows;
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
          let whole = 0;
          let digit = c - ZERO;
          while (digit >= 0 && digit <= 9) {
            whole = (Math.imul(whole, 10) + digit) | 0;
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
              whole = (Math.imul(whole, 10) + digit) | 0;
              c = bytes[++at]!;
              digit = c - ZERO;
            }
            power = at - point;
            digits += power;
          }
          // nine digits fit into 32 bits, which are far quicker to sum up
          const mantissa = digits <= 9 ? whole : longMantissa(bytes, first, at);
          // beyond 2^53 the product would be rounded twice
          if (digits === 0 || digits > 16 || mantissa > 9007199254740991) {
            good = false;
            break;
          }
          if (skipsSpace) while (c === SPACE) c = bytes[++at]!;
          const size = power === 0 ? mantissa : mantissa / POWERS[power]!;
          const value = negative ? -size : size;
          const slot = slots[index]!;
          // it may stand for no value
          if (!(value >= leasts[slot]! && value <= mosts[slot]!)) {
            good = false;
            break;
          }
          stores[slot]![filled] = ((value + offsets[slot]!) * tops[slot]!) / bottoms[slot]!;
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
      filled += 1;
    }
    this.#rows.count(filled);
    return at;
  }
}

/** Digits between two places as a number, whatever mark stands between them. */
function longMantissa(bytes: Uint8Array, from: number, to: number): number {
  let mantissa = 0;
  for (let at = from; at < to; at += 1) {
    const digit = bytes[at]! - ZERO;
    if (digit >= 0 && digit <= 9) mantissa = mantissa * 10 + digit;
  }
  return mantissa;
}
