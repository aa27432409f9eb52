import type { ClockNote } from './log-batch.ts';

/** How the clock of a log runs. */
export interface ClockKind {
  /** Seconds per unit of the clock as written [s]; 1 for moments. */
  readonly tick: number;
  /** Whether it is a time of day without a date, which begins anew at midnight. */
  readonly ofDay: boolean;
  /** Whether it shows the time of a place, which daylight saving puts on and back by an hour. */
  readonly local: boolean;
}

const HOUR = 3600;
/** Hours of the day at which daylight saving begins or ends somewhere [h], and the coarsest rows in which that shows [s]. */
const CHANGES = { first: 0, last: 4 } as const;
const CHANGE_STEP_MOST = 60;

/** Rows that are looked at ahead before a step back is judged [-]. */
const AHEAD = 12;
/** Mended rows that are held back, so that a swapped row still finds its place [-]. */
const HELD = 12;
/** Steps within which a binary counter goes on after it has wrapped, as rows may be lost meanwhile [-]. */
const WRAP_STEPS = 20;
/** The same for other cycles, whose lengths are met by chance more easily [-]. */
const CYCLE_STEPS = 2.5;
/** Steps between two rows from which one is missing between them [-]. */
const HOLE = 1.4;
/** Rows that show one and the same time before the clock is said to stand still [-]. */
const STANDS_STILL = 200_000;
/** Share of rows that show the time of the row before from which stamps are taken for coarse [-]. */
const COARSE = 0.45;
const NOTES_KEPT = 1000;

/** Counts at which counters wrap [-]; decimal ones belong to clocks that show a part of the time only. */
const WRAPS = [2 ** 15, 2 ** 16, 2 ** 24, 2 ** 31, 2 ** 32];
const DECIMAL_WRAPS = [1e3, 1e4, 1e5, 1e6, 1e9];
/** Times at which clocks begin anew [s]. */
const CYCLES = [60, 3600, 43_200, 86_400];

/** Rows that wait for the rows behind them, in arrays of one length. */
export interface ClockRows {
  /** Time as written [s]. */
  readonly time: Float64Array;
  readonly row: Float64Array;
  readonly others: readonly Float64Array[];
}

/**
 * Mends the clock of a log as its rows come: it makes time rise through wraps, midnight and a clock that was set back,
 * puts swapped rows in order, spreads rows that share one coarse stamp, and says what it did. Gaps are left as they are.
 */
export class ClockMender {
  readonly #kind: ClockKind;
  readonly notes: ClockNote[] = [];
  /** Notes in all; the list holds the first of them. */
  noteCount = 0;
  /** Rows left out as their time could not be read, by number. */
  readonly untimed: number[] = [];
  untimedCount = 0;
  /** Rows that share one stamp, where stamps are coarser than rows [-]. */
  sharedBy = 1;
  standsStill = false;
  #coarse: boolean | undefined;
  #spacing = 0;
  #shift = 0;
  #last = Number.NaN;
  #lastWritten = Number.NaN;
  #step = 0;
  #start = Number.NaN;
  /** Rows at the front of `rows` that are mended already. */
  #mended = 0;
  #rows: ClockRows | undefined;

  constructor(kind: ClockKind) {
    this.#kind = kind;
  }

  /** Time of the first row as written, mended [s]; not a number before it. */
  get start(): number {
    return this.#start;
  }

  /**
   * Takes rows over and gives those that are settled, elapsed from the first; all of them when nothing follows. What is given
   * may lie in the memory that was taken over.
   */
  push(rows: ClockRows, final: boolean): readonly ClockRows[] {
    if (!final && this.#rises(rows.time)) return this.#passOn(rows);
    const all = this.#rows ? appended(this.#rows, rows) : copied(rows);
    const count = all.time.length;
    this.#coarse ??= count < 8 && !final ? undefined : isCoarse(all.time);
    let upTo = final ? count : Math.max(this.#mended, count - AHEAD);
    if (this.#coarse) upTo = Math.min(upTo, this.#spread(all.time, final));
    else if (this.#coarse === undefined) upTo = this.#mended;
    const dropped = this.#mend(all, upTo);
    const settled = final ? upTo : Math.max(0, upTo - HELD);
    const out = cut(all, 0, settled, dropped);
    this.#rows = copied(cut(all, settled, count, dropped));
    this.#mended = this.#rows.time.length - (count - upTo);
    return [this.#elapsed(out)];
  }

  /** Whether nothing is to be mended: time rises through the rows held back and those that come. */
  #rises(time: Float64Array): boolean {
    if (this.#coarse !== false || this.#rows === undefined || time.length <= AHEAD + HELD) return false;
    let last = this.#last - this.#shift;
    for (let at = this.#mended; at < this.#rows.time.length; at += 1) {
      const next = this.#rows.time[at]!;
      if (!(next > last)) return false;
      last = next;
    }
    for (let at = 0; at < time.length; at += 1) {
      const next = time[at]!;
      if (!(next > last)) return false;
      last = next;
    }
    return true;
  }

  /** Gives rows whose time rises, in their own memory. */
  #passOn(rows: ClockRows): readonly ClockRows[] {
    const held = this.#rows!;
    this.#mend(held, held.time.length);
    const count = rows.time.length;
    const none: ReadonlySet<number> = new Set();
    const settled = count - AHEAD - HELD;
    this.#mended = 0;
    this.#mend(rows, count - AHEAD);
    this.#rows = copied(cut(rows, settled, count, none));
    this.#mended = HELD;
    return [this.#elapsed(held), this.#elapsed(cut(rows, 0, settled, none))];
  }

  #elapsed(rows: ClockRows): ClockRows {
    const { time } = rows;
    for (let at = 0; at < time.length; at += 1) {
      if (Number.isNaN(this.#start)) this.#start = time[at]!;
      time[at]! -= this.#start;
    }
    return rows;
  }

  #note(kind: ClockNote['kind'], row: number, by: number): void {
    this.noteCount += 1;
    if (this.notes.length < NOTES_KEPT) this.notes.push({ kind, row, by_s: by });
  }

  /** Spreads whole groups of rows that share a stamp over the time to the next; gives the place up to which it is done. */
  #spread(time: Float64Array, final: boolean): number {
    let at = this.#mended;
    while (at < time.length) {
      const stamp = time[at]!;
      let next = at + 1;
      while (next < time.length && time[next] === stamp) next += 1;
      const size = next - at;
      if (size > STANDS_STILL) this.standsStill = true;
      if (next === time.length && !final) return this.standsStill ? next : at;
      const length = next < time.length ? time[next]! - stamp : 0;
      const usual = this.#spacing;
      const own = length / size;
      // the first group may have begun in the middle, the last ends there, and a gap is none of theirs
      if (usual === 0 && next < time.length) {
        let after = next + 1;
        while (after < time.length && time[after] === time[next]) after += 1;
        const full = after < time.length ? (time[after]! - time[next]!) / (after - next) : own;
        this.#spacing = full > 0 ? full : own;
        this.sharedBy = Math.max(size, after - next);
        for (let k = 0; k < size; k += 1)
          time[at + k] = time[next]! - (size - k) * Math.min(this.#spacing, own);
      } else {
        const spacing = length > 0 && own < 3 * usual ? own : usual;
        for (let k = 1; k < size; k += 1) time[at + k] = stamp + k * spacing;
        if (length > 0 && own < 3 * usual) this.#spacing = own;
        this.sharedBy = Math.max(this.sharedBy, size);
      }
      at = next;
    }
    return at;
  }

  /** Mends rows up to a place, in their arrays; gives the places of rows that are to be left out. */
  #mend({ time, row, others }: ClockRows, upTo: number): ReadonlySet<number> {
    const dropped = new Set<number>();
    for (let at = this.#mended; at < upTo; at += 1) {
      const written = time[at]!;
      if (this.#isChanged(written - HOUR)) this.#change(row[at]!, -HOUR);
      const now = written + this.#shift;
      const passed = now - this.#last;
      if (passed > 0) {
        this.#goOn(written, now, passed);
        time[at] = now;
      } else if (Number.isNaN(written)) {
        this.untimedCount += 1;
        if (this.untimed.length < NOTES_KEPT) this.untimed.push(row[at]!);
        dropped.add(at);
      } else if (Number.isNaN(this.#last)) {
        this.#last = now;
        this.#lastWritten = written;
        time[at] = now;
      } else if (passed === 0) {
        time[at] = now;
        if (others.every((values) => Object.is(values[at], values[at - 1])))
          this.#note('duplicate', row[at]!, 0);
      } else this.#back(time, row, others, at, dropped);
    }
    return dropped;
  }

  #goOn(written: number, now: number, passed: number): void {
    this.#last = now;
    this.#lastWritten = written;
    this.#step =
      this.#step === 0 ? passed : this.#step + 0.05 * (Math.min(passed, 4 * this.#step) - this.#step);
  }

  /** Judges a row whose time lies before that of the row before it. */
  #back(
    time: Float64Array,
    row: Float64Array,
    others: readonly Float64Array[],
    at: number,
    dropped: ReadonlySet<number>,
  ): void {
    const written = time[at]!;
    const now = written + this.#shift;
    let resumes = false;
    for (let ahead = at + 1; ahead < Math.min(at + AHEAD, time.length) && !resumes; ahead += 1) {
      resumes = time[ahead]! + this.#shift > this.#last;
    }
    const before = at >= 2 && !dropped.has(at - 1) && !dropped.has(at - 2) ? time[at - 2]! : Number.NaN;
    const strayed = now > before && now - before < 8 * this.#step && this.#last - before > 8 * this.#step;
    if (strayed) {
      // the row before showed a time of its own: it goes between its neighbours
      const middle = (before + now) / 2;
      this.#note('swapped', row[at - 1]!, Math.abs(middle - this.#last));
      time[at - 1] = middle;
      time[at] = now;
      this.#last = now;
      this.#lastWritten = written;
      return;
    }
    let place = at;
    while (place > 0 && at - place < HELD && time[place - 1]! > now) place -= 1;
    // a swapped row has left a hole where it belongs; a clock that was set back has not
    const hole = place > 0 && place < at && time[place]! - time[place - 1]! > HOLE * this.#step;
    if (resumes && (hole || this.#last - now < this.#step)) {
      this.#note('swapped', row[at]!, this.#last - now);
      const settled = place > 0 ? Math.max(now, time[place - 1]!) : now;
      time[at] = settled;
      for (const values of [time, row, ...others]) moveBack(values, at, place);
      return;
    }
    if (this.#isChanged(written + HOUR)) {
      this.#change(row[at]!, HOUR);
      time[at] = written + this.#shift;
      this.#goOn(written, time[at]!, time[at]! - this.#last);
      return;
    }
    const wrap = this.#wrapBefore(written);
    if (wrap > 0) {
      this.#shift += wrap;
      const midnight = this.#kind.ofDay && wrap === 86_400;
      this.#note(midnight ? 'midnight' : 'wrap', row[at]!, wrap);
      time[at] = written + this.#shift;
      this.#goOn(written, time[at]!, time[at]! - this.#last);
      return;
    }
    const by = this.#last + this.#step - now;
    this.#shift += by;
    this.#note('set_back', row[at]!, by);
    time[at] = written + this.#shift;
    this.#last = time[at]!;
    this.#lastWritten = written;
  }

  /**
   * Whether a time as the clock would show it without daylight saving follows upon the row before, over a full hour of the
   * night: the hour that is missing or doubled then is that of the change.
   */
  #isChanged(without: number): boolean {
    const passed = without - this.#lastWritten;
    const step = this.#step;
    if (!this.#kind.local || !(passed > 0 && passed <= CYCLE_STEPS * step && step <= CHANGE_STEP_MOST))
      return false;
    const hour = Math.floor(without / HOUR);
    const ofDay = ((hour % 24) + 24) % 24;
    return hour > Math.floor(this.#lastWritten / HOUR) && ofDay >= CHANGES.first && ofDay <= CHANGES.last;
  }

  #change(row: number, by: number): void {
    this.#shift += by;
    this.#note('daylight_saving', row, by);
  }

  /** What a counter lost when it began anew; 0 where it did not. */
  #wrapBefore(written: number): number {
    const { tick, ofDay } = this.#kind;
    const counts = (wraps: readonly number[], steps: number): (readonly [number, number])[] =>
      wraps.map((wrap) => [wrap * tick, steps * this.#step]);
    const candidates = ofDay
      ? ([86_400, 43_200, 3600] as const).map(
          (cycle) => [cycle, (cycle === 86_400 ? 1e4 : 2.5) * this.#step] as const,
        )
      : [
          ...counts(WRAPS, WRAP_STEPS),
          ...counts(DECIMAL_WRAPS, CYCLE_STEPS),
          ...CYCLES.map((cycle) => [cycle, CYCLE_STEPS * this.#step] as const),
        ];
    for (const [wrap, most] of candidates) {
      const passed = written + wrap - this.#lastWritten;
      if (!(passed > 0 && passed <= most)) continue;
      const fromZero = written < most && written >= -tick / 2 && this.#lastWritten <= wrap + tick / 2;
      const signed = written < -wrap / 2 + most && this.#lastWritten > wrap / 2 - most;
      if (fromZero || signed) return wrap;
    }
    return 0;
  }
}

/** Whether so many rows show the time of the row before that stamps must be coarser than rows. */
function isCoarse(time: Float64Array): boolean {
  let same = 0;
  for (let at = 1; at < time.length; at += 1) if (time[at] === time[at - 1]) same += 1;
  return time.length > 4 && same > COARSE * (time.length - 1);
}

function moveBack(values: Float64Array, from: number, to: number): void {
  const value = values[from]!;
  values.copyWithin(to + 1, to, from);
  values[to] = value;
}

function appended(first: ClockRows, second: ClockRows): ClockRows {
  const both = (a: Float64Array, b: Float64Array): Float64Array => {
    const all = new Float64Array(a.length + b.length);
    all.set(a);
    all.set(b, a.length);
    return all;
  };
  return {
    time: both(first.time, second.time),
    row: both(first.row, second.row),
    others: first.others.map((values, index) => both(values, second.others[index]!)),
  };
}

function copied({ time, row, others }: ClockRows): ClockRows {
  return { time: time.slice(), row: row.slice(), others: others.map((values) => values.slice()) };
}

/** Rows from one place to another in the same memory, but for those that are left out. */
function cut(rows: ClockRows, from: number, to: number, dropped: ReadonlySet<number>): ClockRows {
  const kept = (values: Float64Array): Float64Array =>
    dropped.size === 0
      ? values.subarray(from, to)
      : values.subarray(from, to).filter((_, index) => !dropped.has(from + index));
  return { time: kept(rows.time), row: kept(rows.row), others: rows.others.map(kept) };
}
