/** Where a row stands: in time, in the file, and along the pass. */
export interface Mark {
  readonly time: number;
  readonly row: number;
  /** Way from where the arc of the pass was struck; NaN where nothing tells it [m]. */
  readonly way: number;
}

/** A condition that has held for long enough, from its first row up to the first row after it. */
export interface Stretch {
  readonly from: Mark;
  readonly to: Mark;
}

/** Times of a log are sums: what differs by less is equal [s]. */
const SLACK = 1e-9;

/**
 * Finds where a condition lasts: interruptions shorter than `bridge` are bridged first, and what is then shorter than
 * `least` is dropped. Intervals are half open: from the first row that meets the condition to the first that does not.
 */
export class Lasting {
  private from: Mark | undefined;
  private broken: Mark | undefined;
  private readonly bridge: number;
  private readonly least: number;
  private readonly found: (stretch: Stretch) => void;

  constructor(bridge: number, least: number, found: (stretch: Stretch) => void) {
    this.bridge = bridge;
    this.least = least;
    this.found = found;
  }

  /** One row. A caller may leave out rows that do not hold while nothing is open: they change nothing. */
  row(holds: boolean, time: number, row: number, way: number): void {
    if (holds) {
      if (this.isBrokenOff(time)) this.close(this.broken!);
      this.broken = undefined;
      this.from ??= { time, row, way };
      return;
    }
    if (this.from === undefined) return;
    this.broken ??= { time, row, way };
    if (this.isBrokenOff(time)) this.close(this.broken);
  }

  get isOpen(): boolean {
    return this.from !== undefined;
  }

  /** Since when the condition holds, where it has for long enough at a moment. */
  since(time: number): Mark | undefined {
    const { from, broken } = this;
    return from !== undefined && broken === undefined && time - from.time >= this.least - SLACK
      ? from
      : undefined;
  }

  /** Ends what is open, at the row given unless it was broken off before. */
  end(time: number, row: number, way: number): void {
    if (this.from !== undefined) this.close(this.broken ?? { time, row, way });
  }

  private isBrokenOff(time: number): boolean {
    return this.broken !== undefined && time - this.broken.time >= this.bridge - SLACK;
  }

  private close(to: Mark): void {
    const from = this.from!;
    this.from = undefined;
    this.broken = undefined;
    if (to.time - from.time >= this.least - SLACK) this.found({ from, to });
  }
}
