/** A standard deviation before anything is learned: a guess, and how many observations it is worth. */
export interface StartingSpread {
  /** The guess [-]. */
  readonly sd: number;
  /** Observations that it weighs as much as [-]. */
  readonly worth: number;
}

/** Spread of ln depth at its four levels before a shop has learned anything. */
export const STARTING_DEPTH: Readonly<Record<'family' | 'job' | 'pass' | 'seam', StartingSpread>> = {
  // From the residual of the published rows; they are of about as many rigs as this is worth.
  family: { sd: 0.25, worth: 5 },
  // The three below: judgement, no source.
  job: { sd: 0.06, worth: 3 },
  pass: { sd: 0.04, worth: 3 },
  seam: { sd: 0.045, worth: 3 },
};

/** Range of the process along the seam, Matern 3/2 [m] (judgement, no source). */
export const SEAM_RANGE = 0.25;

/** Spread of width less electrode diameter at its three levels [m]: the first from the rows, the others judgement. */
export const STARTING_WIDTH: Readonly<Record<'family' | 'job' | 'pass', StartingSpread>> = {
  family: { sd: 1.1e-3, worth: 4 },
  job: { sd: 0.2e-3, worth: 4 },
  pass: { sd: 0.25e-3, worth: 4 },
};

/** Spread of ln wear at its two levels: the first from the rows, the other judgement. */
export const STARTING_WEAR: Readonly<Record<'family' | 'job', StartingSpread>> = {
  family: { sd: 0.2, worth: 4 },
  job: { sd: 0.05, worth: 4 },
};

/** Standard deviation added to the level of the depth law where no row is for this metal, in those of a family [-] (judgement, no source). */
export const OTHER_METAL = 1;
/** The same where no row is for this position [-] (judgement, no source). */
export const OTHER_POSITION = 0.8;

/**
 * ln of the density of standard deviations, in their logarithms, before anything is learned.
 *
 * Scaled inverse chi-squared variances: the density of ln sd peaks at the guess.
 *
 * @param starting - guess and worth of each [list], each > 0
 * @param sds - standard deviations [list], each > 0
 * @returns ln density up to a constant [-]
 * @source Gelman and others, Bayesian Data Analysis (3rd edition), section 2.6 (memory)
 * @example
 * startingDensity([{ sd: 0.25, worth: 5 }], [0.25]) // => -2.5
 */
export function startingDensity(starting: readonly StartingSpread[], sds: readonly number[]): number {
  return starting.reduce((sum, { sd, worth }, i) => {
    const away = Math.log(sds[i]! / sd);
    return sum - worth * (away + 0.5 * Math.exp(-2 * away));
  }, 0);
}
