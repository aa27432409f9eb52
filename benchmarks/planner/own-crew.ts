import {
  type Job,
  type PlanOutcome,
  passArea,
  type RemovalBelief,
  type RowOutcome,
  runOutLength,
} from '@furrow/engine';
import { type OwnShops, ownShops, pointsOf } from './own-shops.ts';
import type { TrueShop } from './true-shop.ts';

/** Shares of the jobs of a shop in which each demand was met. */
export interface Came {
  readonly reached: number;
  readonly notTooDeep: number;
}

const REMOVAL_SHARE = 0.85;
const [TRIAL, GAUGE] = [500, 600];

/**
 * Runs a plan of one track over and over in one true shop, as a crew would: from what the plan says and nothing else,
 * rows looked up as printed, the floor followed point by point.
 */
export function crewRuns(
  plan: PlanOutcome,
  job: Job,
  belief: RemovalBelief,
  shop: TrueShop,
  jobs: number,
  seed: number,
): Came {
  const angleTerm = (job.kit.push_angle - Math.PI / 4) / (Math.PI / 12);
  const [node] = belief.depth;
  const known = {
    ...belief,
    depth: [{ ...node!, mean: shop.law, covariance: [0, 1, 2].map(() => [0, 0, 0]) }],
  };
  const draws = ownShops(known, angleTerm, jobs, seed, shop.levels);
  let [reached, notTooDeep] = [0, 0];
  const { depth } = job.groove;
  for (let at = 0; at < jobs; at += 1) {
    const { least, most } = runOnce(plan, job, belief.meltingEnergy, draws, at);
    if (least >= depth.wanted - depth.minus) reached += 1;
    if (most <= depth.wanted + depth.plus) notTooDeep += 1;
  }
  return { reached: reached / jobs, notTooDeep: notTooDeep / jobs };
}

function runOnce(
  plan: PlanOutcome,
  job: Job,
  meltingEnergy: number,
  draws: OwnShops,
  at: number,
): { least: number; most: number } {
  const { diameter } = plan.electrode;
  const { current, voltage } = plan.passes[0]!;
  const unitTravel = (voltage * current) / (diameter ** 2 * meltingEnergy);
  const width = diameter + draws.extraWidth[at]!;
  const length = job.seam.length + 2 * runOutLength(job.groove);
  const cut = (name: number, travel: number): number => {
    const energy = Math.log(unitTravel / travel);
    const depth =
      diameter *
      Math.exp(draws.level[at]! + draws.slope[at]! * energy + draws.levels.pass * draws.normals(name)[at]!);
    const most = REMOVAL_SHARE * Math.exp(energy) * diameter ** 2;
    if (passArea({ width, depth }) <= most) return depth;
    let [low, high] = [0, depth];
    for (let halving = 0; halving < 30; halving += 1) {
      const middle = (low + high) / 2;
      if (passArea({ width, depth: middle }) < most) low = middle;
      else high = middle;
    }
    return low;
  };
  /** Depths along a stretch of passes on top of each other, and their mean over stations. */
  const stretch = (parts: readonly { name: number; depth: number }[], long: number): Float64Array => {
    const points = pointsOf(long);
    const floor = new Float64Array(points);
    for (const { name, depth } of parts) {
      const course = draws.course(name, long);
      for (let i = 0; i < points; i += 1) floor[i] = floor[i]! + depth * course[at * points + i]!;
    }
    return floor;
  };
  const gauged = (floor: Float64Array, long: number, places: readonly number[], name: number): number => {
    const sum = places.reduce(
      (total, place, i) =>
        total +
        floor[Math.min(floor.length - 1, Math.round((place / long) * (floor.length - 1)))]! +
        job.kit.gauge.reading_sd * draws.normals(GAUGE + 20 * name + i)[at]!,
      0,
    );
    return sum / places.length;
  };
  const rowFor = (table: readonly RowOutcome[], reading: number): RowOutcome =>
    table.find(({ to }) => to === undefined || reading < to)!;
  const { tryout } = plan;
  let row: RowOutcome | undefined;
  if (tryout !== undefined) {
    const name = tryout.kind === 'run_in' ? 0 : TRIAL;
    const begun = cut(name, tryout.travel);
    const floor = stretch([{ name, depth: begun }], tryout.length);
    row = rowFor(tryout.table, gauged(floor, tryout.length, tryout.stations, 0));
    if (row.action !== 'run') return { least: 0, most: tryout.kind === 'run_in' ? Math.max(...floor) : 0 };
    if (tryout.kind === 'run_in') {
      const rest = stretch([{ name: 1, depth: cut(1, row.travel!) }], length - tryout.length);
      const again = draws.later[at]! * cut(2, row.deepenTravel!);
      const both = stretch(
        [
          { name: 0, depth: begun },
          { name: 2, depth: again },
        ],
        tryout.length,
      );
      return {
        least: Math.min(Math.min(...rest), Math.min(...both)),
        most: Math.max(Math.max(...rest), Math.max(...both)),
      };
    }
  }
  const travels = plan.passes.map(({ travel }) => travel);
  const parts: { name: number; depth: number }[] = [];
  let before = 0;
  for (let layer = 0; layer < plan.layers; layer += 1) {
    const stop = plan.stops.find(({ afterLayer }) => afterLayer === layer);
    let travel = row === undefined ? travels[layer]! : (row.travel! * travels[layer]!) / travels[0]!;
    if (stop !== undefined) {
      const reading = gauged(stretch(parts, length), length, stop.stations, layer);
      const next = rowFor(stop.table, reading);
      if (next.action !== 'run') break;
      travel = before * next.travelFactor!;
    }
    travel = Math.min(job.kit.travel.most, Math.max(job.kit.travel.least, travel));
    before = travel;
    parts.push({ name: layer, depth: (layer > 0 ? draws.later[at]! : 1) * cut(layer, travel) });
  }
  const floor = stretch(parts, length);
  return { least: Math.min(...floor), most: Math.max(...floor) };
}
