import { bisect, type RegressionBelief, studentProbability, symmetricInverse } from '../numeric/index.ts';
import type { ReadingTable } from './reading-table.ts';
import { LATER_PASS_SD } from './shop-draws.ts';

/** Gauss-Hermite nodes and weights for a standard normal, five points [-]. */
const NODES = [-2.8569700138728056, -1.355626179974266, 0, 1.355626179974266, 2.8569700138728056] as const;
const WEIGHTS = [
  0.011257411327720693, 0.22207592200561266, 0.5333333333333333, 0.22207592200561266, 0.011257411327720693,
] as const;
/** Readings are written in steps of this much [m]. */
const READING_STEP = 0.5e-3;
/** Rows of a table at most [-]: more do not fit the card. */
const ROWS_MOST = 9;
/** Points of the search for the setting that meets both sides best [-]. */
const CENTRE_POINTS = 24;
/** Tolerance of a solved ln specific energy [-]. */
const ENERGY_TOLERANCE = 2e-3;

/** What a table is worked out for. */
export interface TableQuestion {
  /** What is known of the depth law before the reading. */
  readonly belief: RegressionBelief;
  /** Electrode diameter [m]. */
  readonly diameter: number;
  /** Push angle, from 45 deg in units of 15 deg [-]. */
  readonly angleTerm: number;
  /** Least and greatest ln specific energy that the travel allows [-]. */
  readonly energyRange: readonly [number, number];
  /** Mean ln specific energy of the layers run so far, and how many there are. */
  readonly before: { readonly logEnergy: number; readonly layers: number };
  /** Depth the track must have at its centre line [m]. */
  readonly required: number;
  /** Depth it may have at most [m]. */
  readonly most: number;
  /** Standard deviation of the reading, the mean over its stations [m]. */
  readonly readingSd: number;
}

/** How the next pass is chosen: as quick as the chance allows, to meet both sides best, or part of the way. */
export type TableAim =
  | { readonly kind: 'quick'; readonly chance: number }
  | { readonly kind: 'centred' }
  | { readonly kind: 'part'; readonly share: number; readonly chance: number };

/** What a reading promises for one setting of the next pass. */
export interface ReadingForecast {
  /** Chance that the depth is reached [-]. */
  readonly reached: number;
  /** Chance that it is not exceeded [-]. */
  readonly notTooDeep: number;
}

/** Forecasts for one reading: what the next pass brings at a ln specific energy, or none at all. */
export interface ReadingOutlook {
  readonly after: (logEnergy: number) => ReadingForecast;
  /** The first part of it alone [-]. */
  readonly reachedAfter: (logEnergy: number) => number;
  readonly asItIs: ReadingForecast;
  /** Depth after the next pass that is exceeded with chance 1 - share [m]. */
  readonly depthQuantile: (logEnergy: number, share: number) => number;
  /** ln specific energy whose median cut is this deep [-]. */
  readonly energyForCut: (cut: number) => number;
}

/**
 * Works out what can be expected after readings, the belief updated by each in closed form.
 *
 * One observation changes the covariance by a rank-one term that is the same for every reading, and the leverage
 * of the next pass is a quadratic in its ln specific energy: a table asks for thousands of chances, so both are
 * worked out once.
 */
export function outlooks(question: TableQuestion): (reading: number, rowWidth: number) => ReadingOutlook {
  const { belief, before, angleTerm, diameter, required, most } = question;
  const covariance = symmetricInverse(belief.precision);
  const seen = [1, before.logEnergy, angleTerm];
  const pull = covariance.map((row) => dot(row, seen));
  const weight = 1 + dot(seen, pull);
  const after = covariance.map((row, r) => row.map((value, c) => value - (pull[r]! * pull[c]!) / weight));
  const shape = belief.shape + 0.5;
  const student = tabulated(2 * shape);
  const normal = tabulated(NORMAL_DEGREES);
  const still = [1, 0, angleTerm];
  const slopeRow = after[1]!;
  const [flat, linear, square] = [
    dot(
      still,
      after.map((row) => dot(row, still)),
    ),
    2 * dot(slopeRow, still),
    slopeRow[1]!,
  ];
  return (reading, rowWidth) => {
    const surprise =
      Math.log(Math.max(reading, READING_STEP) / (before.layers * diameter)) - dot(seen, belief.mean);
    const mean = belief.mean.map((value, index) => value + (pull[index]! * surprise) / weight);
    const noise = (belief.scale + surprise ** 2 / (2 * weight)) / shape;
    const centre = mean[0]! + mean[2]! * angleTerm;
    const slope = mean[1]!;
    // Where the reading stands within its row is not known to the table, so the row's width adds to its spread.
    const readingSpread = Math.hypot(question.readingSd, rowWidth / Math.sqrt(12));
    const spreadAt = (logEnergy: number): number =>
      Math.sqrt(noise * (1 + flat + logEnergy * (linear + logEnergy * square)) + LATER_PASS_SD ** 2);
    const chanceOf = (cuts: Float64Array, logEnergy: number): number => {
      const location = centre + slope * logEnergy;
      const spread = spreadAt(logEnergy);
      let chance = 0;
      for (let node = 0; node < cuts.length; node += 1) {
        chance += WEIGHTS[node]! * student((cuts[node]! - location) / spread);
      }
      return chance;
    };
    const toRequired = logCuts(required, reading, readingSpread, diameter);
    const toMost = logCuts(most, reading, readingSpread, diameter);
    const reachedAfter = (logEnergy: number): number => 1 - chanceOf(toRequired, logEnergy);
    return {
      asItIs: {
        reached: 1 - normal((required - reading) / readingSpread),
        notTooDeep: normal((most - reading) / readingSpread),
      },
      reachedAfter,
      after: (logEnergy) => ({ reached: reachedAfter(logEnergy), notTooDeep: chanceOf(toMost, logEnergy) }),
      depthQuantile: (logEnergy, share) => {
        const far =
          reading +
          4 * readingSpread +
          diameter * Math.exp(centre + slope * logEnergy + 6 * spreadAt(logEnergy));
        return (
          bisect(
            (depth) => chanceOf(logCuts(depth, reading, readingSpread, diameter), logEnergy) - share,
            0,
            far,
            1e-6,
          ) ?? reading
        );
      },
      energyForCut: (cut) => (Math.log(cut / diameter) - centre) / slope,
    };
  };
}

/** ln of the cuts, over the diameter, that lead to a depth from where the floor may be; no cut is small enough: -Infinity. */
function logCuts(depth: number, reading: number, readingSpread: number, diameter: number): Float64Array {
  const cuts = new Float64Array(NODES.length);
  for (let node = 0; node < cuts.length; node += 1) {
    const cut = depth - (reading + readingSpread * NODES[node]!);
    cuts[node] = cut > 0 ? Math.log(cut / diameter) : Number.NEGATIVE_INFINITY;
  }
  return cuts;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, index) => sum + value * b[index]!, 0);
}

/** Works out a table: rows over the readings to expect, each with the setting of the next pass. */
export function gaugeTable(
  question: TableQuestion,
  expected: { readonly low: number; readonly high: number },
  aim: TableAim,
): ReadingTable {
  // A reading deeper than allowed calls for no setting, so one open row above the rest serves for all of them.
  const low = Math.min(expected.low, question.most - READING_STEP);
  const high = Math.min(expected.high, question.most);
  const span = Math.max(high - low, READING_STEP);
  const step = Math.ceil(span / (ROWS_MOST - 1) / READING_STEP - 1e-9) * READING_STEP;
  const first = Math.floor(low / step + 1e-9) * step;
  const rows = Math.min(ROWS_MOST, Math.ceil((high - first) / step - 1e-9) + 1);
  const outlookOf = outlooks(question);
  const edges: number[] = [];
  const readings: number[] = [];
  const logEnergy: number[] = [];
  for (let row = 0; row < rows; row += 1) {
    const reading = first + (row + 0.5) * step;
    readings.push(reading);
    logEnergy.push(settingFor(question, outlookOf(reading, step), reading, aim));
    if (row + 1 < rows) edges.push(Math.round((first + (row + 1) * step) * 1e7) / 1e7);
  }
  return { edges, readings, logEnergy };
}

function settingFor(
  question: TableQuestion,
  outlook: ReadingOutlook,
  reading: number,
  aim: TableAim,
): number {
  const [low, high] = question.energyRange;
  switch (aim.kind) {
    case 'quick': {
      if (outlook.asItIs.reached >= aim.chance) return Number.NaN;
      return quickest(outlook, aim.chance, low, high);
    }
    case 'part': {
      if (outlook.asItIs.reached >= aim.chance) return Number.NaN;
      const wanted = Math.sqrt(question.required * question.most);
      const cut = aim.share * Math.max(READING_STEP, wanted - reading);
      return Math.min(high, Math.max(low, outlook.energyForCut(cut)));
    }
    case 'centred': {
      let best = Number.NaN;
      let bestSum = outlook.asItIs.reached + outlook.asItIs.notTooDeep;
      for (let point = 0; point <= CENTRE_POINTS; point += 1) {
        const logEnergy = low + ((high - low) * point) / CENTRE_POINTS;
        const { reached, notTooDeep } = outlook.after(logEnergy);
        if (reached + notTooDeep > bestSum) {
          bestSum = reached + notTooDeep;
          best = logEnergy;
        }
      }
      return best;
    }
  }
}

/** Least energy, so greatest travel, at which the depth is reached with the chance; the greatest energy if none is. */
function quickest(outlook: ReadingOutlook, chance: number, low: number, high: number): number {
  const short = (logEnergy: number): number => outlook.reachedAfter(logEnergy) - chance;
  if (short(low) >= 0) return low;
  return bisect(short, low, high, ENERGY_TOLERANCE) ?? high;
}

/** Degrees of freedom from which Student's t is as good as normal here [-]. */
const NORMAL_DEGREES = 1e6;
/** Span and points of a tabulated cumulative distribution [-]. */
const TABLE_SPAN = 8;
const TABLE_POINTS = 640;
const tables = new Map<number, Float64Array>();

/** Cumulative Student-t probability from a table, to about 1e-5: many are needed and the exact one is slow. */
function tabulated(degrees: number): (t: number) => number {
  const known = tables.get(degrees);
  const table =
    known ??
    Float64Array.from({ length: TABLE_POINTS + 1 }, (_, point) =>
      studentProbability(-TABLE_SPAN + (2 * TABLE_SPAN * point) / TABLE_POINTS, degrees),
    );
  if (known === undefined) tables.set(degrees, table);
  return (t) => {
    if (!(t > -TABLE_SPAN)) return 0;
    if (t >= TABLE_SPAN) return 1;
    const place = ((t + TABLE_SPAN) * TABLE_POINTS) / (2 * TABLE_SPAN);
    const below = Math.floor(place);
    return table[below]! + (table[below + 1]! - table[below]!) * (place - below);
  };
}
