import { cutPass, type Floor, flatFloor, floorDepthAt, passArea } from '../groove/index.ts';
import type { Job } from '../job/index.ts';
import { type DrawStream, drawStream } from '../numeric/index.ts';
import { REMOVAL_SHARE_MOST, SEAM_RANGE, type SpreadLevels, STARTING_DEPTH } from '../removal/index.ts';
import type { PlanOutcome, RowOutcome } from './outcome.ts';
import { beliefOf } from './plan-of.test-support.ts';

/** Standard deviations below the family that a shop without history is planned with. */
export const STARTING: SpreadLevels = {
  job: STARTING_DEPTH.job.sd,
  pass: STARTING_DEPTH.pass.sd,
  seam: STARTING_DEPTH.seam.sd,
};

/** Shares of the simulated shops in which each demand is met. */
export interface Simulated {
  readonly reached: number;
  readonly notTooDeep: number;
  readonly ligamentKept: number;
  /** Shops whose last stop said to run no more, and how many of them are short or too deep somewhere [-]. */
  readonly left: { readonly shops: number; readonly missed: number };
}

/** Distance between the points at which the floor is followed [m]. */
const STEP = 0.02;
const LATER_SD = 0.1;

/**
 * Runs a plan as a crew would, from what the plan says and nothing else: every pass has its own course along the seam,
 * drawn point by point; gauges read it where the stations lie; rows are looked up as printed; the floor of several
 * tracks is cut on a grid at every point. Nothing of the planner's own running is used.
 */
export function simulateShops(
  plan: PlanOutcome,
  job: Job,
  shops: number,
  seed: number,
  levels: SpreadLevels,
): Simulated {
  const stream = drawStream(seed);
  const counts = { reached: 0, notTooDeep: 0, ligamentKept: 0 };
  const left = { shops: 0, missed: 0 };
  for (let shop = 0; shop < shops; shop += 1) {
    const { least, most, isLeft } = runShop(plan, job, stream, levels);
    const { depth, ligament_least: ligament } = job.groove;
    if (isLeft) {
      left.shops += 1;
      if (least < depth.wanted - depth.minus || most > depth.wanted + depth.plus) left.missed += 1;
    }
    if (least >= depth.wanted - depth.minus) counts.reached += 1;
    if (most <= depth.wanted + depth.plus) counts.notTooDeep += 1;
    if (job.plate.thickness - most >= ligament) counts.ligamentKept += 1;
  }
  return {
    reached: counts.reached / shops,
    notTooDeep: counts.notTooDeep / shops,
    ligamentKept: counts.ligamentKept / shops,
    left,
  };
}

/** One shop: the law it works by, how wide it cuts. */
interface Shop {
  readonly law: readonly number[];
  readonly later: number;
  readonly width: number;
}

function runShop(
  plan: PlanOutcome,
  job: Job,
  stream: DrawStream,
  levels: SpreadLevels,
): { least: number; most: number; isLeft?: boolean } {
  const belief = beliefOf(job);
  const [node] = belief.depth;
  const [width] = belief.extraWidth;
  const correlated = multivariate(node!.mean, node!.covariance, stream);
  const shop: Shop = {
    law: [correlated[0]! + levels.job * stream.normal(), correlated[1]!, correlated[2]!],
    later: Math.max(0.1, 1 + LATER_SD * stream.normal()),
    width:
      plan.electrode.diameter +
      Math.max(
        0,
        width!.mean + Math.sqrt(width!.variance + width!.job ** 2 + width!.pass ** 2) * stream.normal(),
      ),
  };
  const [first] = plan.passes;
  const unitTravel =
    (first!.voltage * first!.current) / (plan.electrode.diameter ** 2 * belief.meltingEnergy);
  const cutOf = (travel: number, length: number): Float64Array => {
    const lnEnergy = Math.log(unitTravel / travel);
    const angle = (first!.pushAngle - Math.PI / 4) / (Math.PI / 12);
    const middle =
      shop.law[0]! + shop.law[1]! * lnEnergy + shop.law[2]! * angle + levels.pass * stream.normal();
    const most = deepestWith(
      REMOVAL_SHARE_MOST * Math.exp(lnEnergy) * plan.electrode.diameter ** 2,
      shop.width,
    );
    const pass = Math.min(most, plan.electrode.diameter * Math.exp(middle));
    return course(length, stream).map((value) => pass * Math.exp(levels.seam * value));
  };
  const gauged = (depth: Float64Array, length: number, places: readonly number[]): number => {
    const read = places.map((place) => {
      const at = depth[Math.min(depth.length - 1, Math.round((place / length) * (depth.length - 1)))]!;
      return at + job.kit.gauge.reading_sd * stream.normal();
    });
    return read.reduce((sum, value) => sum + value, 0) / read.length;
  };
  const rowFor = (table: readonly RowOutcome[], reading: number): RowOutcome =>
    table.find((row) => row.to === undefined || reading < row.to)!;
  const length = plan.passLength;
  const { tryout } = plan;
  let row: RowOutcome | undefined;
  if (tryout !== undefined) {
    const trial = cutOf(tryout.travel, tryout.length);
    row = rowFor(tryout.table, gauged(trial, tryout.length, tryout.stations));
    if (row.action !== 'run') return { least: 0, most: tryout.kind === 'run_in' ? Math.max(...trial) : 0 };
    if (tryout.kind === 'run_in') {
      const rest = cutOf(row.travel!, length - tryout.length);
      const again = cutOf(row.deepenTravel!, tryout.length);
      const deepened = trial.map((value, at) => value + shop.later * again[at]!);
      return { least: Math.min(...rest, ...deepened), most: Math.max(...rest, ...deepened) };
    }
  }
  const { tracks } = plan.pattern;
  // Travels of later layers stand to the first as they do in the passes listed.
  const travels = Array.from({ length: plan.layers }, (_, layer) => plan.passes[layer * tracks]!.travel);
  const before: number[] = [];
  const done = new Array<boolean>(tracks).fill(false);
  let isLeft = false;
  const cuts: Float64Array[][] = [];
  for (let layer = 0; layer < plan.layers; layer += 1) {
    const stop = plan.stops.find(({ afterLayer }) => afterLayer === layer);
    const floors = Array.from({ length: tracks }, (_, track) => floorOf(plan, shop, cuts, track));
    const made: Float64Array[] = [];
    for (let track = 0; track < tracks; track += 1) {
      let travel = row === undefined ? travels[layer]! : (row.travel! * travels[layer]!) / travels[0]!;
      if (stop !== undefined && !done[track]) {
        const next = rowFor(stop.table, gauged(floors[track]!, length, stop.stations));
        if (next.action === 'run') travel = before[track]! * next.travelFactor!;
        else {
          done[track] = true;
          isLeft = next.action === 'done';
        }
      }
      travel = Math.min(job.kit.travel.most, Math.max(job.kit.travel.least, travel));
      before[track] = travel;
      const factor = layer > 0 ? shop.later : 1;
      made.push(done[track] ? new Float64Array(0) : cutOf(travel, length).map((value) => factor * value));
    }
    cuts.push(made);
  }
  return { ...readSeam(plan, job, shop, cuts), isLeft };
}

/** Depth at the centre line of a track so far, along the seam; neighbours are too shallow to reach it. */
function floorOf(
  plan: PlanOutcome,
  _shop: Shop,
  cuts: readonly Float64Array[][],
  track: number,
): Float64Array {
  const points = pointsOf(plan.passLength);
  const depth = new Float64Array(points);
  for (const layer of cuts) {
    layer[track]!.forEach((value, at) => {
      depth[at] = depth[at]! + value;
    });
  }
  return depth;
}

function readSeam(
  plan: PlanOutcome,
  job: Job,
  shop: Shop,
  cuts: readonly Float64Array[][],
): { least: number; most: number } {
  const { tracks, spacing } = plan.pattern;
  const points = pointsOf(plan.passLength);
  const zone = job.groove.floor_width / 2;
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let at = 0; at < points; at += 1) {
    let floor: Floor = flatFloor(((tracks - 1) * spacing) / 2 + shop.width, 0.25e-3);
    if (tracks === 1 && zone === 0) {
      const depth = cuts.reduce((sum, layer) => sum + (layer[0]![at] ?? 0), 0);
      least = Math.min(least, depth);
      most = Math.max(most, depth);
      continue;
    }
    for (const layer of cuts) {
      layer.forEach((cut, track) => {
        if (cut.length === 0) return;
        const offset = (track - (tracks - 1) / 2) * spacing;
        floor = cutPass(floor, { offset, width: shop.width, depth: cut[at]! });
      });
    }
    for (let offset = -zone; offset <= zone + 1e-12; offset += 0.25e-3)
      least = Math.min(least, floorDepthAt(floor, offset));
    most = Math.max(most, ...floor.depth);
  }
  return { least, most };
}

function pointsOf(length: number): number {
  return Math.max(3, Math.round(length / STEP) + 1);
}

/** One course of the standardised Matern 3/2 process, by the exact step of its two states. */
function course(length: number, stream: DrawStream): Float64Array {
  const points = pointsOf(length);
  const step = (Math.sqrt(3) / SEAM_RANGE) * (length / (points - 1));
  const decay = Math.exp(-step);
  const values = new Float64Array(points);
  let value = stream.normal();
  let slope = stream.normal();
  values[0] = value;
  for (let at = 1; at < points; at += 1) {
    const meanValue = decay * ((1 + step) * value + step * slope);
    const meanSlope = decay * (-step * value + (1 - step) * slope);
    const ofValue = 1 - decay ** 2 * ((1 + step) ** 2 + step ** 2);
    const ofSlope = 1 - decay ** 2 * ((1 - step) ** 2 + step ** 2);
    const ofBoth = decay ** 2 * (step * (1 + step) - step * (1 - step));
    const first = Math.sqrt(Math.max(0, ofValue));
    const pull = first > 0 ? ofBoth / first : 0;
    const [z, w] = [stream.normal(), stream.normal()];
    value = meanValue + first * z;
    slope = meanSlope + pull * z + Math.sqrt(Math.max(0, ofSlope - pull ** 2)) * w;
    values[at] = value;
  }
  return values;
}

/** Greatest depth whose section has this area, by halving. */
function deepestWith(area: number, width: number): number {
  let low = 0;
  let high = width + (2 * area) / width;
  for (let halving = 0; halving < 40; halving += 1) {
    const depth = (low + high) / 2;
    if (passArea({ width, depth }) < area) low = depth;
    else high = depth;
  }
  return low;
}

function multivariate(
  mean: readonly number[],
  covariance: readonly (readonly number[])[],
  stream: DrawStream,
): number[] {
  const factor = covariance.map((row) => row.map(() => 0));
  covariance.forEach((row, r) => {
    for (let c = 0; c <= r; c += 1) {
      const left =
        row[c]! - factor[r]!.slice(0, c).reduce((sum, value, k) => sum + value * factor[c]![k]!, 0);
      factor[r]![c] = r === c ? Math.sqrt(left) : left / factor[c]![c]!;
    }
  });
  const z = mean.map(() => stream.normal());
  return mean.map((value, r) => value + factor[r]!.reduce((sum, each, c) => sum + each * z[c]!, 0));
}
