import { compileModule, instanceOf } from '../numeric/index.ts';
import { readMoment } from './moment-cell.ts';
import { type CellsOfRow, cellsOfRow, MOMENT, type QuickWalk } from './quick-walk.ts';
import type { CutMarks } from './record-cutter.ts';
import type { TableReading } from './table-reading.ts';
import type { TableRows } from './table-rows.ts';
import { WALK_WASM } from './walk-wasm.ts';

/** Bytes that are walked over at a time [bytes]. */
const WINDOW = 1 << 18;
/** Room in front of and behind them: eight are read at once, and one before the first is looked at [bytes]. */
const MARGIN = 16;
/** Powers of ten by which a number is divided at most, and one more [-]. */
const POWERS = 24;

/** 32-bit numbers at the head of the memory, in this order; the places in walk.as are theirs. */
const HEAD = [
  'width',
  'delimiter',
  'quote',
  'eol',
  'decimal',
  'repeated',
  'kinds',
  'stores',
  'scales',
  'starts',
  'powers',
  'filled',
] as const;
const FILLED = HEAD.indexOf('filled');
/** Numbers of a scale, in this order. */
const SCALE = ['top', 'bottom', 'offset', 'least', 'most'] as const;

/** What the module exports. */
interface WalkRoutines {
  readonly walk: (begin: number, limit: number, room: number) => number;
}

const compiled = compileModule(WALK_WASM);

/** The quick walk in WebAssembly; undefined where it does not run. */
export function walkKernel(reading: TableReading, rows: TableRows, by: CutMarks): QuickWalk | undefined {
  const cells = cellsOfRow(reading, rows);
  const layout = layoutOf(cells, rows);
  const run = instanceOf<WalkRoutines>(compiled(), layout.bytes);
  return run === undefined ? undefined : new WalkKernel(run, layout, cells, rows, by);
}

/** Where things lie in the memory [bytes]. */
interface WalkLayout {
  readonly powers: number;
  readonly kinds: number;
  readonly stores: number;
  /** How each number becomes SI: SCALE of each cell. */
  readonly scales: number;
  readonly starts: number;
  /** Numbers of the first column; each further one lies behind the one before. */
  readonly columns: number;
  readonly window: number;
  readonly bytes: number;
}

function layoutOf({ kinds }: CellsOfRow, rows: TableRows): WalkLayout {
  const room = rows.rows.length;
  let end = 0;
  const place = (length: number): number => {
    const at = end;
    end = Math.ceil((at + length) / 8) * 8;
    return at;
  };
  place(4 * HEAD.length);
  return {
    powers: place(8 * POWERS),
    kinds: place(kinds.length),
    stores: place(4 * kinds.length),
    scales: place(8 * SCALE.length * kinds.length),
    starts: place(4 * room),
    columns: place(8 * room * rows.columns.length),
    window: place(WINDOW + 2 * MARGIN) + MARGIN,
    bytes: end,
  };
}

class WalkKernel implements QuickWalk {
  readonly #run: WalkRoutines;
  readonly #rows: TableRows;
  readonly #eol: number;
  readonly #window: number;
  readonly #memory: Uint8Array;
  readonly #head: Uint32Array;
  readonly #starts: Uint32Array;
  readonly #numbers: readonly Float64Array[];
  readonly #moments: readonly { readonly slot: number; readonly ends: Uint32Array }[];
  #bytes: Uint8Array = new Uint8Array(0);
  /** Which of the bytes lie in the window. */
  #from = 0;
  #to = 0;

  constructor(
    { exports: run, buffer }: { readonly exports: WalkRoutines; readonly buffer: ArrayBuffer },
    layout: WalkLayout,
    { kinds, slots, decimal }: CellsOfRow,
    rows: TableRows,
    { delimiter, quote, eol, repeated }: CutMarks,
  ) {
    const room = rows.rows.length;
    this.#run = run;
    this.#rows = rows;
    this.#eol = eol;
    this.#window = layout.window;
    this.#memory = new Uint8Array(buffer);
    this.#head = new Uint32Array(buffer, 0, HEAD.length);
    this.#starts = new Uint32Array(buffer, layout.starts, room);
    const columnAt = (slot: number): number => layout.columns + 8 * room * slot;
    this.#numbers = rows.columns.map((_, slot) => new Float64Array(buffer, columnAt(slot), room));
    this.#moments = rows.columns.flatMap(({ index }, slot) =>
      kinds[index] === MOMENT ? [{ slot, ends: new Uint32Array(buffer, columnAt(slot), 2 * room) }] : [],
    );
    new Uint8Array(buffer, layout.kinds, kinds.length).set(kinds);
    new Uint32Array(buffer, layout.stores, kinds.length).set(Array.from(slots, columnAt));
    const scales = new Float64Array(buffer, layout.scales, SCALE.length * kinds.length);
    rows.columns.forEach(({ index, scale }) => {
      scales.set(
        SCALE.map((name) => scale[name]),
        SCALE.length * index,
      );
    });
    new Float64Array(buffer, layout.powers, POWERS).set(
      Array.from({ length: POWERS }, (_, power) => Number(`1e${power}`)),
    );
    const values: Record<(typeof HEAD)[number], number> = {
      width: kinds.length,
      delimiter,
      quote,
      eol,
      decimal,
      repeated: repeated ? 1 : 0,
      kinds: layout.kinds,
      stores: layout.stores,
      scales: layout.scales,
      starts: layout.starts,
      powers: layout.powers,
      filled: 0,
    };
    this.#head.set(HEAD.map((name) => values[name]));
  }

  take(bytes: Uint8Array): void {
    this.#bytes = bytes;
    this.#from = 0;
    this.#to = 0;
  }

  walk(begin: number): number {
    const rows = this.#rows;
    let at = begin;
    while (at < this.#bytes.length && !rows.isFull) {
      if (at < this.#from || at >= this.#to) this.#fill(at);
      if (at >= this.#to) return at;
      const off = this.#window - this.#from;
      this.#head[FILLED] = rows.filled;
      at = this.#run.walk(at + off, this.#to + off, rows.rows.length) - off;
      const kept = this.#keep(this.#head[FILLED]!);
      if (kept !== undefined) return kept - off;
      if (at < this.#to) return at;
    }
    return at;
  }

  /** Puts bytes from a place on into the window, up to the last end of a line in it. */
  #fill(at: number): void {
    const bytes = this.#bytes;
    const most = bytes.subarray(at, at + WINDOW);
    this.#from = at;
    // a line that is longer is left to be judged cell by cell
    this.#to = at + (at + WINDOW < bytes.length ? most.lastIndexOf(this.#eol) + 1 : most.length);
    this.#memory.set(most, this.#window);
  }

  /** Takes the rows over up to a count; gives the place in memory of one with a moment that cannot be read. */
  #keep(count: number): number | undefined {
    const rows = this.#rows;
    const { columns } = rows;
    const before = rows.filled;
    let end = count;
    for (const { slot, ends } of this.#moments) {
      const { values, column } = columns[slot]!;
      const { parts, order } = column.moment!;
      for (let row = before; row < end; row += 1) {
        const value = readMoment(this.#memory, ends[2 * row]!, ends[2 * row + 1]!, parts, order);
        if (Number.isNaN(value)) end = row;
        else values[row] = value;
      }
    }
    if (end > before) {
      columns.forEach(({ values, column }, slot) => {
        if (column.holds === 'number') values.set(this.#numbers[slot]!.subarray(before, end), before);
      });
    }
    rows.count(end);
    return end < count ? this.#starts[end] : undefined;
  }
}
