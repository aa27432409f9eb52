/** Temperatures in the section through time, on one grid for all frames. */
export interface HeatField {
  /** Centres of the cells across the section, from the groove's centre line, increasing [m]. */
  readonly across: Float64Array;
  /** Centres of the cells below the plate's surface, increasing [m]. */
  readonly below: Float64Array;
  readonly frames: readonly HeatFrame[];
}

/** The section at one time. */
export interface HeatFrame {
  /** Time since the first arc [s]. */
  readonly time: number;
  /** Number of the pass that ran last or runs now; 0 before the first [-]. */
  readonly pass: number;
  /** Temperature of each cell, across running fastest; NaN where the metal is cut out [K]. */
  readonly temperature: Float32Array;
  /** Depth of the floor at each place of `across`; 0 where nothing is cut [m]. */
  readonly floor: Float32Array;
}
