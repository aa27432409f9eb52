/** One row of a log in SI; not a number where the log has no such reading, or where its cell could not be read. */
export interface Row {
  /** Elapsed [s]. */
  time: number;
  /** Number of the data row, from 1 [-]. */
  row: number;
  volts: number;
  amps: number;
  /** As the wheel tells it [m/s]. */
  speed: number;
  position: number;
  feed: number;
  air: number;
  flow: number;
  /** Way of the log at it, from any zero [m]. */
  way: number;
  /** Time that the interval before it counts for: a silent logger held its last reading for one interval [s]. */
  held: number;
}

/** A row before the first. */
export function noRow(): Row {
  const none = Number.NaN;
  return {
    // kept as doubles from the first, so that setting them allocates nothing
    time: 0.5,
    row: 0.5,
    volts: none,
    amps: none,
    speed: none,
    position: none,
    feed: none,
    air: none,
    flow: none,
    way: none,
    held: none,
  };
}
