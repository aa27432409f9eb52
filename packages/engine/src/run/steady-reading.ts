/** Rise over the value before from which one row is suspected of being a spike [-]: judgement, no source. */
const JUMP = 0.35;
/** Times the usual step between rows that it must be as well [-]. */
const STEPS = 12;
/** Rows for which a suspect is held back [-]; then it is a new level. */
const SUSPECT_ROWS = 2;
/** Chance of a run of equal rows below which the reading is called stale [-]. */
const STALE_CHANCE = 1e-12;
const STALE_ROWS_LEAST = 10;
/** Memory of the usual step between rows [rows]. */
const STEP_MEMORY = 200;

/**
 * Watches one reading of the arc for values that no arc gives: beyond what the rig can do, or up and back within two
 * rows. `clean` gives the value to go on with, the one before in place of a spike.
 */
export class SteadyReading {
  private good = Number.NaN;
  private usualStep = Number.NaN;
  private suspectRows = 0;
  private suspectValue = 0;
  private beyondRows = 0;
  /** The last spike that came to its end in `clean`; taken by the caller. */
  ended: { value: number; around: number; rows: number } | undefined;
  private last = Number.NaN;
  /** Equal rows in a row from which the reading is stale. */
  readonly staleRows: number;
  private readonly least: number;
  private readonly most: number;
  private readonly jump: number;

  constructor(level: number | undefined, most: number, repeats: number) {
    this.most = most;
    this.least = -0.15 * (level ?? most);
    this.jump = JUMP * (level ?? Number.POSITIVE_INFINITY);
    const chance = Math.min(0.999, Math.max(0.02, repeats));
    this.staleRows = Math.max(STALE_ROWS_LEAST, Math.ceil(Math.log(STALE_CHANCE) / Math.log(chance)));
  }

  /** The value to go on with; `mayJump`: a jump at this row has another explanation. */
  clean(value: number, mayJump: boolean): number {
    if (Number.isNaN(value)) return Number.NaN;
    if (value > this.most || value < this.least) {
      this.beyondRows += 1;
      this.suspectValue = value;
      return this.good;
    }
    if (this.beyondRows > 0) {
      this.ended = { value: this.suspectValue, around: this.good, rows: this.beyondRows };
      this.beyondRows = 0;
    }
    const step = value - this.good;
    if (!mayJump && step > this.jump && step > STEPS * this.usualStep && this.suspectRows < SUSPECT_ROWS) {
      this.suspectRows += 1;
      this.suspectValue = value;
      return this.good;
    }
    if (this.suspectRows > 0) {
      // Back where it was: a spike. Not back: a new level.
      if (step <= this.jump)
        this.ended = { value: this.suspectValue, around: this.good, rows: this.suspectRows };
      this.suspectRows = 0;
    } else if (!Number.isNaN(step)) {
      const size = Math.abs(step);
      this.usualStep = !Number.isNaN(this.usualStep)
        ? this.usualStep + (size - this.usualStep) / STEP_MEMORY
        : size;
    }
    this.good = value;
    return value;
  }

  /** Whether a row repeats the one before. */
  repeats(value: number): boolean {
    const same = value === this.last;
    this.last = value;
    return same;
  }
}
