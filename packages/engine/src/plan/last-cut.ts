import { normalQuantile } from '../numeric/index.ts';

/** What is known before the last gauge stop, and what may be cut after it; depths in parts of the depth aimed at. */
export interface LastCut {
  /** Floor before the stop in the middle of what is expected [-]. */
  readonly floor: number;
  /** Standard deviation of its logarithm over shops [-]. */
  readonly spread: number;
  /** Part of the logarithm of what a reading differs by that the next pass differs by too [-]. */
  readonly gain: number;
  /** Least that a pass cuts, at the quickest travel, in a middle shop [-]. */
  readonly least: number;
  /** Standard deviation of its logarithm over shops, beside what the floor tells of it [-]. */
  readonly leastSpread: number;
  /** Standard deviation of a reading [-]. */
  readonly error: number;
  /** Standard deviation of ln of a cut that is not in common with the passes before [-]. */
  readonly own: number;
  /** Depth that is required, and that the drawing allows [-]. */
  readonly required: number;
  readonly most: number;
  /** Chance of lying between the two from which on a floor is left as it is [-]. */
  readonly enough: number;
  /** Standard deviation of ln depth by the extremes along the seam [-]. */
  readonly along: number;
}

/** Shops that stand for all [-]. */
const SHOPS = 21;
/** Their floors, evenly likely, and how strongly they cut, in an order of its own: standard normal values [-]. */
const READINGS = Array.from({ length: SHOPS }, (_, index) => {
  const golden = ((index + 1) * (Math.sqrt(5) - 1)) / 2;
  return { floor: normalQuantile((index + 0.5) / SHOPS), cut: normalQuantile(golden % 1) };
});
/** Steps of the search for a margin [-], and how near it comes in ln and in chance. */
const STEPS = 12;
const NEAR = 1e-3;
const CLOSE = 3e-4;

/**
 * How far below and above the depth aimed at, in ln, the floor comes after the last cut, each with the wanted chance;
 * how deep it is on the mean, in parts of the depth aimed at, and in which share of the shops it is left as it was gauged.
 *
 * A carriage cannot cut less than at its quickest travel. Where a reading leaves less than that to cut, the floor is
 * left as it is, or cut too deep; so it is where the passes before went deeper than was aimed at.
 */
export function marginsAfterStop(
  cut: LastCut,
  chance: number,
): { readonly below: number; readonly above: number; readonly mean: number; readonly left: number } {
  const parts = READINGS.map((z) =>
    finished(cut, cut.floor * Math.exp(cut.spread * z.floor), Math.exp(cut.leastSpread * z.cut)),
  );
  const mean = parts.reduce((sum, { middle }) => sum + Math.exp(middle), 0) / parts.length;
  const left = parts.reduce((sum, part) => sum + (part.left ? 1 : 0), 0) / parts.length;
  return { below: margin(parts, -1, chance), above: margin(parts, 1, chance), mean, left };
}

/** A part of the shops after the last cut: ln depth against what was aimed at, normal. */
interface Part {
  readonly middle: number;
  readonly sd: number;
  /** Whether the floor is left as it was gauged. */
  readonly left: boolean;
}

/** What becomes of a floor of this depth: run once more, or left, as the table of the stop says. */
function finished(cut: LastCut, floor: number, strength: number): Part {
  const missing = 1 - floor;
  const least = cut.least * strength * (floor / cut.floor) ** cut.gain;
  const run = Math.max(missing, least);
  const rest = Math.hypot(cut.error, run * cut.own);
  const between = (middle: number, sd: number): number =>
    probability((cut.most - middle) / sd) - probability((cut.required - middle) / sd);
  const left =
    missing < least && between(floor, cut.error) >= Math.min(between(floor + run, rest), cut.enough);
  return left
    ? { middle: Math.log(floor), sd: Math.max(cut.along, 1e-6), left }
    : { middle: Math.log(floor + run), sd: Math.hypot(rest / (floor + run), cut.along), left };
}

/** Distance to one side, in ln, that is kept with the wanted chance: false position, the stale end halved. */
function margin(parts: readonly Part[], side: 1 | -1, chance: number): number {
  const short = (distance: number): number => {
    let sum = 0;
    for (const { middle, sd } of parts) sum += probability((distance - side * middle) / sd);
    return sum / parts.length - chance;
  };
  let [low, high] = [-0.1, 0.6];
  let [atLow, atHigh] = [short(low), short(high)];
  // Beyond the bracket no way is of use.
  if (atLow >= 0) return low;
  if (atHigh <= 0) return high;
  for (let step = 0; step < STEPS && high - low > NEAR; step += 1) {
    const middle = low + (high - low) * Math.min(0.9, Math.max(0.1, -atLow / (atHigh - atLow)));
    const there = short(middle);
    if (Math.abs(there) < CLOSE) return middle;
    if (there < 0) {
      [low, atLow, atHigh] = [middle, there, atHigh / 2];
    } else {
      [high, atHigh, atLow] = [middle, there, atLow / 2];
    }
  }
  return (low + high) / 2;
}

/** Cumulative probability of the standard normal distribution to 1e-7, several times as quick as to the last digit: Abramowitz and Stegun 26.2.17. */
export function probability(z: number): number {
  const size = Math.abs(z);
  const t = 1 / (1 + 0.2316419 * size);
  const tail =
    0.3989422804014327 *
    Math.exp((-size * size) / 2) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z < 0 ? tail : 1 - tail;
}
