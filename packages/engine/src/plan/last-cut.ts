import { normalProbability, normalQuantile } from '../numeric/index.ts';

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
  /** Distance, in ln depth, to either limit from which on a floor holds both as surely as wanted: left as it is, and after the pass [-]. */
  readonly leftMargin: number;
  readonly runMargin: number;
  /** Standard deviation of ln depth by the extremes along the seam [-]. */
  readonly along: number;
}

/** Shops that stand for all [-]. */
const SHOPS = 21;
/** Their floors, evenly likely, and how strongly they cut, in an order of its own: standard normal values [-]. */
const FLOORS = Float64Array.from({ length: SHOPS }, (_, index) => normalQuantile((index + 0.5) / SHOPS));
const CUTS = Float64Array.from({ length: SHOPS }, (_, index) =>
  normalQuantile((((index + 1) * (Math.sqrt(5) - 1)) / 2) % 1),
);
/** Steps of the search for a margin [-], how near it comes in chance, and where no way is of use beyond, in ln. */
const STEPS = 8;
const CLOSE = 1e-4;
const [LEAST_MARGIN, GREATEST_MARGIN] = [-0.1, 0.6];

/** What becomes of the floor in each of the shops, written anew by every question: middle of ln depth, and what one over its standard deviation is [-]. */
const middles = new Float64Array(SHOPS);
const steepness = new Float64Array(SHOPS);

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
  let [left, mean, first, second, variance] = [0, 0, 0, 0, 0];
  for (let shop = 0; shop < SHOPS; shop += 1) {
    const floor = cut.floor * Math.exp(cut.spread * FLOORS[shop]!);
    const missing = 1 - floor;
    const least = cut.least * Math.exp(cut.leastSpread * CUTS[shop]! + cut.gain * cut.spread * FLOORS[shop]!);
    const run = Math.max(missing, least);
    const rest = Math.sqrt(cut.error ** 2 + (run * cut.own) ** 2);
    const stays = isLeft(cut, floor, missing < least ? floor + run : undefined);
    const depth = stays ? floor : floor + run;
    const sd = Math.sqrt(((stays ? cut.error : rest) / depth) ** 2 + cut.along ** 2);
    const middle = Math.log(depth);
    middles[shop] = middle;
    steepness[shop] = 1 / sd;
    if (stays) left += 1;
    mean += depth;
    first += middle;
    second += middle * middle;
    variance += sd * sd;
  }
  const middle = first / SHOPS;
  const spread = Math.sqrt(Math.max(0, (second + variance) / SHOPS - middle * middle));
  // As if all shops together were normal: near enough to start from.
  const apart = quantileOf(chance) * spread;
  return {
    below: margin(-1, chance, apart - middle),
    above: margin(1, chance, apart + middle),
    mean: mean / SHOPS,
    left: left / SHOPS,
  };
}

/** The quantile that was asked for last: a search asks for one over and over. */
let asked = { chance: Number.NaN, quantile: Number.NaN };

function quantileOf(chance: number): number {
  if (asked.chance !== chance) asked = { chance, quantile: normalQuantile(chance) };
  return asked.quantile;
}

/** Whether a floor is left as it was gauged, as the table of the stop says: it holds, or a pass that is not thinner goes too deep. */
function isLeft({ leftMargin, runMargin, required, most }: LastCut, floor: number, deeper?: number): boolean {
  if (Math.log(floor / required) >= leftMargin && Math.log(most / floor) >= leftMargin) return true;
  return deeper !== undefined && Math.log(most / deeper) < runMargin;
}

/** Distance to one side, in ln, that is kept with the wanted chance: Newton's steps inside the bracket that they leave. */
function margin(side: 1 | -1, chance: number, start: number): number {
  let [low, high] = [LEAST_MARGIN, GREATEST_MARGIN];
  let at = Math.min(high, Math.max(low, start));
  for (let step = 0; step < STEPS; step += 1) {
    let [sum, slope] = [0, 0];
    for (let shop = 0; shop < SHOPS; shop += 1) {
      const steep = steepness[shop]!;
      const place = ((at - side * middles[shop]!) * steep + REACH) * PER_SD;
      if (place <= 0) continue;
      if (place >= LAST) {
        sum += 1;
        continue;
      }
      const entry = Math.floor(place);
      const rise = NORMAL[entry + 1]! - NORMAL[entry]!;
      sum += NORMAL[entry]! + (place - entry) * rise;
      slope += rise * PER_SD * steep;
    }
    const short = sum / SHOPS - chance;
    if (Math.abs(short) < CLOSE) return at;
    if (short < 0) low = at;
    else high = at;
    if (high - low < 1e-6) return at;
    const next = at - (short * SHOPS) / slope;
    at = next > low && next < high ? next : (low + high) / 2;
  }
  return at;
}

/** The standard normal distribution between so many standard deviations to either side, and entries per standard deviation [-]. */
const REACH = 8;
const PER_SD = 256;
const LAST = 2 * REACH * PER_SD;
const NORMAL = Float64Array.from({ length: LAST + 1 }, (_, entry) =>
  normalProbability(entry / PER_SD - REACH),
);

/** Cumulative probability of the standard normal distribution to 5e-7, many times as quick as to the last digit: read off a table between its entries. */
export function probability(z: number): number {
  const place = (z + REACH) * PER_SD;
  if (!(place > 0)) return 0;
  if (place >= LAST) return 1;
  const entry = Math.floor(place);
  return NORMAL[entry]! + (place - entry) * (NORMAL[entry + 1]! - NORMAL[entry]!);
}
