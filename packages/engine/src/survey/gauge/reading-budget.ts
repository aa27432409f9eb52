/** What the uncertainty of one gauged depth is made of. */
export interface BudgetInput {
  /** Standard deviation of repeated readings by one hand [m], > 0. */
  readonly repeatability: number;
  /** Standard deviation between hands, days or runs [m]. */
  readonly reproducibility: number;
  /** Readings that are averaged for one depth [-]. */
  readonly averaged: number;
  /** Smallest step that the gauge shows [m]. */
  readonly resolution?: number | undefined;
  /** How far plate and bridge may put a reading off, to either side [m]. */
  readonly seating?: number | undefined;
  /** Standard uncertainty by its certificate [m]. */
  readonly calibration?: number | undefined;
  /** Deviation on the block that was found and is not corrected, and its standard uncertainty [m]. */
  readonly deviation?:
    | {
        /** Deviation [m]. */
        readonly off: number;
        /** Its standard uncertainty [m]. */
        readonly u: number;
      }
    | undefined;
}

/** One line of an uncertainty budget. */
export interface BudgetLine {
  readonly what: 'repeatability' | 'reproducibility' | 'resolution' | 'seating' | 'calibration' | 'deviation';
  /** Standard uncertainty that it adds [m]. */
  readonly u: number;
}

/** Uncertainty of one gauged depth, with what it is made of. */
export interface ReadingBudget {
  readonly lines: readonly BudgetLine[];
  /** Standard uncertainty [m]. */
  readonly u: number;
}

/**
 * Puts the uncertainty of one gauged depth together.
 *
 * Resolution counts as a rectangle of its own width, seating as one of twice its half width; a deviation on the block
 * that is not corrected counts whole, beside its uncertainty.
 *
 * @param input - what it is made of [record], all >= 0
 * @returns the lines and their root sum of squares [record]
 * @source JCGM 100:2008, 4.3.7 (rectangles), 5.1.2 (sum); the uncorrected deviation is common practice, no source
 * @example
 * readingBudget({ repeatability: 1.5e-4, reproducibility: 0, averaged: 3, resolution: 1e-4, seating: 2e-4, calibration: 5e-5 }).u // => 0.000155456...
 */
export function readingBudget(input: BudgetInput): ReadingBudget {
  const { repeatability, reproducibility, averaged, resolution = 0, seating = 0, calibration = 0 } = input;
  const { off, u: offU } = input.deviation ?? { off: 0, u: 0 };
  const all: readonly BudgetLine[] = [
    { what: 'repeatability', u: repeatability / Math.sqrt(averaged) },
    { what: 'reproducibility', u: reproducibility },
    { what: 'resolution', u: resolution / Math.sqrt(12) },
    { what: 'seating', u: seating / Math.sqrt(3) },
    { what: 'calibration', u: calibration },
    { what: 'deviation', u: Math.hypot(off, offU) },
  ];
  return { lines: all.filter(({ u }) => u > 0), u: Math.hypot(...all.map(({ u }) => u)) };
}
