import type { Job } from '../job/index.ts';
import { type DrawStream, normalProbability } from '../numeric/index.ts';

/** Kinds of work whose durations go together: who is slow at one is slow at the other. */
const KINDS = [
  'set_up',
  'commissioning',
  'handling',
  'cooling',
  'cleaning',
  'grinding',
  'inspection',
  'refill',
] as const;

/** Durations over their usual values, by kind of work [-]. */
export type WorkFactors = Readonly<Record<(typeof KINDS)[number], number>>;

/** Every duration at its usual value. */
export const USUAL_FACTORS = Object.fromEntries(KINDS.map((kind) => [kind, 1])) as WorkFactors;

/** Correlation between the durations of any two kinds of work, in normal deviates [-] (judgement, no source). */
export const DAY_SHARE = 0.5;

/**
 * Draws the factors of one job: triangular from least over the usual value to most. One draw is the day's, which all kinds of
 * work share, one each is their own: on a bad day everything takes longer.
 */
export function drawFactors(spread: Job['after']['spread'], stream: DrawStream): WorkFactors {
  const factors = { ...USUAL_FACTORS } as Record<(typeof KINDS)[number], number>;
  const day = Math.sqrt(DAY_SHARE) * stream.normal();
  for (const kind of KINDS) {
    const { least = spread.least, most = spread.most } = spread[kind];
    factors[kind] = triangular(
      least,
      1,
      most,
      normalProbability(day + Math.sqrt(1 - DAY_SHARE) * stream.normal()),
    );
  }
  return factors;
}

/**
 * Quantile of a triangular distribution: the three-point estimate of a duration or a price.
 *
 * @param least - least value [-], <= usual
 * @param usual - most likely value [-], between least and most
 * @param most - greatest value [-], >= usual
 * @param chance - share of the values below the one wanted [-], 0 to 1
 * @returns the value, in the unit of the three [-]
 * @source textbook; mean (a + m + b) / 3 (CST-073, derived)
 * @example
 * triangular(8, 10, 18, 0.2) // => 10
 * triangular(1, 1, 1, 0.7) // => 1
 */
export function triangular(least: number, usual: number, most: number, chance: number): number {
  const width = most - least;
  if (width <= 0) return usual;
  const rising = usual - least;
  return chance * width <= rising
    ? least + Math.sqrt(chance * width * rising)
    : most - Math.sqrt((1 - chance) * width * (most - usual));
}
