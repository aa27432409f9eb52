import { mixtureQuantile, type NormalPart, normalProbability } from '../numeric/index.ts';
import type { PlanOutcome } from '../plan/index.ts';
import {
  beliefOfElectrode,
  depthRegressors,
  depthWithinCeiling,
  type PassSetting,
  predictWidth,
  type RemovalBelief,
} from '../removal/index.ts';
import type { PassRun } from './outcome.ts';

/** Cells along the seam at most [-], and their least length [m]. */
const CELLS_MOST = 6000;
const CELL_LEAST = 0.002;

/** Depth along the seam from what the passes put into it; SI. */
export interface DepthAlong {
  /** Length of a cell [m]. */
  readonly cell: number;
  /** How many cells the seam has [-]. */
  readonly cells: number;
  /** What each track of each layer put into each cell [J/m]. */
  readonly layers: readonly (readonly Float64Array[])[];
  /** Median depth in a cell [m]. */
  readonly median: (cell: number) => number;
  /** Percentile of the depth in a cell [m]. */
  readonly at: (cell: number, share: number) => number;
  /** Chance that a cell is shallower than a depth [-]. */
  readonly chanceBelow: (cell: number, depth: number) => number;
}

/** What one track did to one cell. */
interface Cut {
  /** Part of its layer that it stands for [-]. */
  readonly share: number;
  readonly setting: PassSetting;
  readonly regressors: readonly number[];
}

/** What one layer put into the seam [J/m], per cell. */
interface LayerEnergy {
  readonly layer: number;
  readonly tracks: Float64Array[];
}

/**
 * Depth along the seam, from the energy that each pass put into each piece of it, through the removal law with its four
 * levels of spread: a carriage that stands digs deeper, an arc that is out leaves metal standing.
 *
 * The arc's foot is as long as the electrode is thick, so energy is spread over that length. Layers add up; of the
 * tracks of one layer the mean is taken. What is common to the job moves all layers together, what a pass has for
 * itself moves one.
 *
 * @param passes - passes as they were run [list], with their courses
 * @param plan - the plan that they are taken for [record], from `planJob`
 * @param belief - what is known of removal [record], as the plan was made with
 * @param length - length of the seam [m], > 0
 * @param pushAngle - push angle [rad], above 0 and up to pi/2
 * @returns the depth along the seam; undefined where no pass has a place on it [record]
 * @source log-linear law in the specific energy with four levels of spread: see `publishedBelief`; sum of layers by the delta method
 * @example
 * depthAlong([], demoAnswer.basis.plan, publishedBelief(metalOf('carbon_steel'), 'flat'), 1, 0.785) // => undefined
 */
export function depthAlong(
  passes: readonly PassRun[],
  plan: PlanOutcome,
  belief: RemovalBelief,
  length: number,
  pushAngle: number,
): DepthAlong | undefined {
  const cells = Math.min(CELLS_MOST, Math.max(1, Math.round(length / CELL_LEAST)));
  const cell = length / cells;
  const { diameter } = plan.electrode;
  const layers = new Map<number, LayerEnergy>();
  for (const pass of passes) {
    const planned = plan.passes.find(({ number }) => number === pass.planned);
    if (pass.course === undefined || planned === undefined) continue;
    const of = layers.get(planned.layer) ?? { layer: planned.layer, tracks: [] };
    of.tracks.push(energyAlong(pass, cells, cell, diameter));
    layers.set(planned.layer, of);
  }
  if (layers.size === 0) return undefined;
  const known = beliefOfElectrode(belief, plan.electrode);
  const width = predictWidth(known, diameter).p50;
  const energies = [...layers.values()].map(({ tracks }) => tracks);

  const tracks = energies.flatMap((each) => each.map((energy) => ({ energy, share: 1 / each.length })));
  const setting = { diameter, current: 1, travel: 1, pushAngle };
  const cutsAt = (at: number): Cut[] => {
    const cuts: Cut[] = [];
    for (const { energy, share } of tracks) {
      const voltage = energy[at]!;
      if (!(voltage > 0)) continue;
      const cut = { ...setting, voltage };
      cuts.push({ share, setting: cut, regressors: depthRegressors(cut, known.meltingEnergy) });
    }
    return cuts;
  };
  /** Depth of a cut as one part of the law has it, no deeper than its energy can melt [m]. */
  const depthOf = ({ share, setting, regressors }: Cut, mean: readonly number[]): number => {
    const depth = diameter * Math.exp(dot(mean, regressors));
    return share * depthWithinCeiling(depth, setting, width, known.meltingEnergy);
  };
  const median = (at: number): number => {
    const cuts = cutsAt(at);
    if (cuts.length === 0) return 0;
    let middle = 0;
    for (const { weight, mean } of known.depth) {
      let total = 0;
      for (const cut of cuts) total += depthOf(cut, mean);
      middle += weight * Math.log(total);
    }
    return Math.exp(middle);
  };

  // several things are asked of a cell one after the other
  let last: { readonly at: number; readonly parts: readonly NormalPart[] } = { at: -1, parts: [] };
  const partsAt = (at: number): readonly NormalPart[] => {
    if (last.at !== at) last = { at, parts: partsOf(at) };
    return last.parts;
  };
  const partsOf = (at: number): readonly NormalPart[] => {
    const cuts = cutsAt(at);
    if (cuts.length === 0) return [];
    return known.depth.map(({ weight, mean, covariance, levels }) => {
      const depths = cuts.map((cut) => depthOf(cut, mean));
      const total = depths.reduce((sum, depth) => sum + depth, 0);
      const shares = depths.map((depth) => depth / total);
      const x = [0, 1, 2].map((k) => cuts.reduce((sum, cut, i) => sum + shares[i]! * cut.regressors[k]!, 0));
      const common = dot(
        covariance.map((row) => dot(row, x)),
        x,
      );
      const own = shares.reduce((sum, share) => sum + share ** 2, 0);
      const variance = common + levels.job ** 2 + own * (levels.pass ** 2 + levels.seam ** 2);
      return { weight, mean: Math.log(total), variance };
    });
  };
  return {
    cell,
    cells,
    layers: energies,
    median,
    at: (at, share) => {
      const parts = partsAt(at);
      return parts.length === 0 ? 0 : Math.exp(mixtureQuantile([...parts], share));
    },
    chanceBelow: (at, depth) => {
      const parts = partsAt(at);
      if (parts.length === 0) return depth > 0 ? 1 : 0;
      return parts.reduce(
        (sum, part) =>
          sum + part.weight * normalProbability((Math.log(depth) - part.mean) / Math.sqrt(part.variance)),
        0,
      );
    },
  };
}

/** Arc energy per length in each cell of the seam, spread over the foot of the arc [J/m]. */
function energyAlong(pass: PassRun, cells: number, cell: number, foot: number): Float64Array {
  const { width, start, energy } = pass.course!;
  const put = new Float64Array(cells);
  const ends = [pass.placeOf(start), pass.to!, pass.from!];
  const places: [number, number] = [Math.min(...ends), Math.max(...ends)];
  // Ends beyond the seam count where they lie; the foot of the arc is cut off where the pass begins and ends.
  const margin = Math.ceil(foot / cell) + 1;
  const padded = new Float64Array(cells + 2 * margin);
  for (let bin = 0; bin < energy.length; bin += 1) {
    if (energy[bin] === 0) continue;
    const a = pass.placeOf(start + bin * width);
    const b = pass.placeOf(start + (bin + 1) * width);
    const [low, high] = clamped(Math.min(a, b), Math.max(a, b), places);
    spread(padded, low / cell + margin, high / cell + margin, energy[bin]!);
  }
  const sums = new Float64Array(padded.length + 1);
  for (let i = 0; i < padded.length; i += 1) sums[i + 1] = sums[i]! + padded[i]!;
  const sumTo = (at: number): number => {
    const inside = Math.min(padded.length, Math.max(0, at));
    const whole = Math.floor(inside);
    return sums[whole]! + (whole < padded.length ? (inside - whole) * padded[whole]! : 0);
  };
  for (let at = 0; at < cells; at += 1) {
    const middle = (at + 0.5) * cell;
    const low = Math.max(middle - foot / 2, places[0]);
    const high = Math.min(middle + foot / 2, places[1]);
    if (high <= low) continue;
    put[at] = (sumTo(high / cell + margin) - sumTo(low / cell + margin)) / (high - low);
  }
  return put;
}

function clamped(low: number, high: number, [from, to]: [number, number]): [number, number] {
  const a = Math.min(Math.max(low, from), to);
  const b = Math.min(Math.max(high, from), to);
  return b > a ? [a, b] : [a - 1e-9, a + 1e-9];
}

/** Spreads an amount over fractional cells. */
function spread(list: Float64Array, from: number, to: number, amount: number): void {
  const last = Math.min(list.length - 1, Math.floor(to));
  for (let at = Math.max(0, Math.floor(from)); at <= last; at += 1) {
    const share = (Math.min(to, at + 1) - Math.max(from, at)) / (to - from);
    if (share > 0) list[at]! += amount * share;
  }
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}
