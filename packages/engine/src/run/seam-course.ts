/** Width of a bin before any has to be put together [m]. */
const BIN = 0.002;
/** Bins at most: two of them become one where a way is longer [-]. */
const BINS_MOST = 2 ** 17;

/** What was put into the seam along the way of one pass, in bins: flat memory however long the log. */
export interface WayBins {
  /** Width of a bin [m]. */
  readonly width: number;
  /** Way at the lower edge of the first bin [m]. */
  readonly start: number;
  /** Arc energy put into each bin [J]. */
  readonly energy: Float64Array;
  /** Arc time spent in each bin [s]. */
  readonly time: Float64Array;
  /** Part of that time in which the logger was silent and the arc is taken to have burned on [s]. */
  readonly unseen: Float64Array;
}

/** What an interval gave to the seam. */
export interface CoursePiece {
  /** Way from the strike at its start and end [m]. */
  from: number;
  to: number;
  /** Arc energy [J], and time [s]. */
  energy: number;
  time: number;
  /** Whether the logger saw it. */
  seen: boolean;
}

/** Fills the bins of one pass: what an interval gave is spread evenly over the way it covered. */
export class SeamCourse {
  private width = BIN;
  /** Number of the bin that lies first in the lists. */
  private first = 0;
  private energy = new Float64Array(1024);
  private time = new Float64Array(1024);
  private unseen = new Float64Array(1024);
  private low = Number.POSITIVE_INFINITY;
  private high = Number.NEGATIVE_INFINITY;

  add({ from, to, energy, time, seen }: CoursePiece): void {
    const start = Math.min(from, to);
    const end = Math.max(from, to);
    let bin = Math.floor(start / this.width);
    let last = Math.floor(end / this.width);
    if (bin < this.low || last > this.high) {
      this.reach(start, end);
      bin = Math.floor(start / this.width);
      last = Math.floor(end / this.width);
    }
    const way = end - start;
    for (; bin <= last; bin += 1) {
      const share =
        bin === last && way === 0
          ? 1
          : (Math.min(end, (bin + 1) * this.width) - Math.max(start, bin * this.width)) / way;
      const at = bin - this.first;
      this.energy[at]! += energy * share;
      this.time[at]! += time * share;
      if (!seen) this.unseen[at]! += time * share;
    }
  }

  bins(): WayBins {
    if (this.high < this.low) {
      const none = new Float64Array(0);
      return { width: this.width, start: 0, energy: none, time: none, unseen: none };
    }
    const from = this.low - this.first;
    const to = this.high - this.first + 1;
    return {
      width: this.width,
      start: this.low * this.width,
      energy: this.energy.slice(from, to),
      time: this.time.slice(from, to),
      unseen: this.unseen.slice(from, to),
    };
  }

  private reach(start: number, end: number): void {
    for (;;) {
      const low = Math.min(this.low, Math.floor(start / this.width));
      const high = Math.max(this.high, Math.floor(end / this.width));
      if (high - low < BINS_MOST) {
        if (low < this.first || high >= this.first + this.energy.length) this.grow(low, high);
        this.low = low;
        this.high = high;
        return;
      }
      this.pair();
    }
  }

  private grow(low: number, high: number): void {
    const need = high - low + 1;
    const size = Math.max(2 * this.energy.length, 2 * need);
    // Room at the side towards which the carriage runs.
    const first = low < this.first ? high - size + 1 : low;
    const offset = this.first - first;
    const moved = (list: Float64Array): Float64Array<ArrayBuffer> => {
      const grown = new Float64Array(size);
      if (this.high >= this.low) {
        const used = list.subarray(this.low - this.first, this.high - this.first + 1);
        grown.set(used, this.low - this.first + offset);
      }
      return grown;
    };
    this.energy = moved(this.energy);
    this.time = moved(this.time);
    this.unseen = moved(this.unseen);
    this.first = first;
  }

  private pair(): void {
    const first = Math.floor(this.first / 2);
    const paired = (list: Float64Array): Float64Array<ArrayBuffer> => {
      const half = new Float64Array(list.length);
      for (let at = 0; at < list.length; at += 1)
        half[Math.floor((this.first + at) / 2) - first]! += list[at]!;
      return half;
    };
    this.energy = paired(this.energy);
    this.time = paired(this.time);
    this.unseen = paired(this.unseen);
    this.first = first;
    this.low = Math.floor(this.low / 2);
    this.high = Math.floor(this.high / 2);
    this.width *= 2;
  }
}
