import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import { cutPass, type Floor, flatFloor, floorDepthAt, measureFloor, shallowestIn } from '../groove/index.ts';
import type { Job } from '../job/index.ts';
import type { RegressionBelief } from '../numeric/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import { conjugateBelief } from './conjugate-belief.ts';
import type { GaugeRow, Plan } from './result.ts';

/**
 * Shops that carry out a printed plan, for the tests of the planner's honesty. Nothing of the planner is used:
 * the generator is another one, draws are plain, the floor is a grid, and only what the card says is known.
 */

/** Shops counted in which the depth was reached and in which no point was too deep. */
interface Tally {
  count: number;
  depthReached: number;
  notTooDeep: number;
}

/** Share of the shops in which each demand held [-]. */
export interface SimulatedShares {
  readonly depthReached: number;
  readonly notTooDeep: number;
  readonly ligamentKept: number;
  readonly widthInBand: number;
  /** How the groove came out in the end after the readings of each row: by stop, then by row. */
  readonly rows: readonly (readonly Readonly<Tally>[])[];
}

/** One shop as nature has it: unknown to the plan. */
interface Shop {
  readonly law: readonly number[];
  readonly passSpread: number;
  readonly radius: number;
  readonly laterFactor: number;
}

/** Spread of the depth factor of later passes, about 1 [-]: process description, section 2. */
const LATER_SPREAD = 0.1;
const GRID_STEP = 0.1e-3;
/** Rounding that does not count as a miss [m]. */
const SLACK = 1e-6;

/** Carries a plan out in many shops and counts how often each demand holds. */
export function simulateShops(
  plan: Plan,
  job: Job,
  posterior: RemovalBelief,
  count: number,
  seed: number,
): SimulatedShares {
  const normal = boxMuller(seed);
  const { groove, plate } = job;
  const held = { depthReached: 0, notTooDeep: 0, ligamentKept: 0, widthInBand: 0 };
  const rows = plan.gauge_stops.map((stop) =>
    stop.table.map((): Tally => ({ count: 0, depthReached: 0, notTooDeep: 0 })),
  );
  for (let index = 0; index < count; index += 1) {
    const shop = drawShop(plan, posterior, normal);
    const read: Tally[] = [];
    const floor = carryOut(plan, shop, posterior.meltingEnergy, normal, (stop, row) =>
      read.push(rows[stop]![row]!),
    );
    const { deepest } = measureFloor(floor);
    const width = widthOf(floor);
    const edges = [-groove.floor_width / 2, groove.floor_width / 2].map((at) => floorDepthAt(floor, at));
    const shallowest = Math.min(shallowestIn(floor, groove.floor_width), ...edges);
    const depthReached = shallowest >= groove.depth.wanted - groove.depth.minus - SLACK;
    const notTooDeep = deepest <= groove.depth.wanted + groove.depth.plus + SLACK;
    for (const tally of read) {
      tally.count += 1;
      if (depthReached) tally.depthReached += 1;
      if (notTooDeep) tally.notTooDeep += 1;
    }
    if (depthReached) held.depthReached += 1;
    if (notTooDeep) held.notTooDeep += 1;
    if (plate.thickness - deepest >= groove.ligament_least - SLACK) held.ligamentKept += 1;
    if (width >= groove.width.least - SLACK && width <= groove.width.most + SLACK) held.widthInBand += 1;
  }
  return {
    depthReached: held.depthReached / count,
    notTooDeep: held.notTooDeep / count,
    ligamentKept: held.ligamentKept / count,
    widthInBand: held.widthInBand / count,
    rows,
  };
}

/** Runs the passes in the printed order; where there is a gauge stop, every track is read first. */
function carryOut(
  plan: Plan,
  shop: Shop,
  meltingEnergy: number,
  normal: () => number,
  note: (stop: number, row: number) => void,
): Floor {
  const outermost = Math.max(...plan.passes.map((pass) => Math.abs(pass.offset_mm))) * 1e-3;
  // The walls flare out by about a twentieth of the depth, which is less than the radius here.
  let floor = flatFloor(outermost + 2 * shop.radius + 5e-3, GRID_STEP);
  const finished = new Set<number>();
  for (let layer = 1; layer <= plan.layers; layer += 1) {
    const passes = plan.passes.filter((pass) => pass.layer === layer);
    const stopIndex = plan.gauge_stops.findIndex((each) => each.after_layer === layer - 1);
    const stop = plan.gauge_stops[stopIndex];
    const rows = passes.map((pass): GaugeRow | undefined => {
      if (stop === undefined || finished.has(pass.track)) return undefined;
      const there = floorDepthAt(floor, pass.offset_mm * 1e-3) * 1e3;
      const readings = Array.from({ length: stop.stations }, () => there + stop.reading_sd_mm * normal());
      const row = rowFor(stop.table, readings.reduce((sum, value) => sum + value, 0) / stop.stations);
      note(stopIndex, stop.table.indexOf(row));
      return row;
    });
    passes.forEach((pass, index) => {
      const row = rows[index];
      // Whoever is told that a track is done, or to ask, runs no more passes there.
      if (row !== undefined && row.action !== 'run') finished.add(pass.track);
      if (finished.has(pass.track)) return;
      const travel = (row?.travel_mm_per_min ?? pass.travel_mm_per_min) / 60_000;
      const diameter = plan.electrode_diameter_mm * 1e-3;
      const energy = (pass.arc_voltage_V * pass.current_A) / (travel * diameter * diameter * meltingEnergy);
      const [level, slope, angle] = shop.law as [number, number, number];
      const lnDepth =
        level +
        slope * Math.log(energy) +
        (angle * (pass.push_angle_deg - 45)) / 15 +
        shop.passSpread * normal();
      floor = cutPass(floor, {
        offset: pass.offset_mm * 1e-3,
        width: 2 * shop.radius,
        depth: (layer > 1 ? shop.laterFactor : 1) * diameter * Math.exp(lnDepth),
      });
    });
  }
  return floor;
}

/** Width at the surface; the wall is carried on from its two uppermost grid points to the surface. */
function widthOf(floor: Floor): number {
  const { depth, step } = floor;
  const first = depth.findIndex((value) => value > 0);
  const last = depth.findLastIndex((value) => value > 0);
  const beyond = (at: number, inner: number): number =>
    Math.min(1, depth[at]! / Math.max(1e-12, depth[inner]! - depth[at]!));
  return (last - first + beyond(first, first + 1) + beyond(last, last - 1)) * step;
}

/** The row of the card for a reading; one below zero counts as zero, as a gauge shows no less. */
function rowFor(table: readonly GaugeRow[], reading: number): GaugeRow {
  const shown = Math.max(0, reading);
  const row = table.find(
    (each) => shown >= each.reading_from_mm && (each.reading_to_mm === null || shown < each.reading_to_mm),
  );
  if (row === undefined) throw new Error(`The table has no row for a reading of ${shown} mm`);
  return row;
}

function drawShop(plan: Plan, posterior: RemovalBelief, normal: () => number): Shop {
  const { depth, extraWidth } = conjugateBelief(posterior);
  const law = drawLaw(depth, normal);
  const width = drawLaw(extraWidth, normal);
  const extra = Math.max(0, width.coefficients[0]! + width.spread * normal());
  return {
    law: law.coefficients,
    passSpread: law.spread,
    radius: (plan.electrode_diameter_mm * 1e-3 + extra) / 2,
    laterFactor: Math.max(0.1, 1 + LATER_SPREAD * normal()),
  };
}

/** Draws variance and coefficients from a normal-inverse-gamma belief: s2 = b / gamma(a), then N(m, s2 P^-1). */
function drawLaw(belief: RegressionBelief, normal: () => number): { coefficients: number[]; spread: number } {
  const spread = Math.sqrt(belief.scale / halfIntegerGamma(belief.shape, normal));
  const lower = cholesky(belief.precision);
  const size = belief.mean.length;
  const shift = belief.mean.map(() => normal());
  // With P = C C', C'^-1 z has the covariance P^-1.
  for (let row = size - 1; row >= 0; row -= 1) {
    for (let below = row + 1; below < size; below += 1) shift[row]! -= lower[below]![row]! * shift[below]!;
    shift[row]! /= lower[row]![row]!;
  }
  return { coefficients: belief.mean.map((mean, row) => mean + spread * shift[row]!), spread };
}

/** Half a chi-squared draw of 2 a degrees: a sum of squares, for shapes that are multiples of one half. */
function halfIntegerGamma(shape: number, normal: () => number): number {
  if (!Number.isInteger(2 * shape)) throw new Error(`Shape ${shape} is not a multiple of one half`);
  let sum = 0;
  for (let degree = 0; degree < 2 * shape; degree += 1) sum += normal() ** 2 / 2;
  return sum;
}

function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const lower = matrix.map((row) => row.map(() => 0));
  matrix.forEach((values, row) => {
    for (let column = 0; column <= row; column += 1) {
      let value = values[column]!;
      for (let before = 0; before < column; before += 1) {
        value -= lower[row]![before]! * lower[column]![before]!;
      }
      lower[row]![column] = row === column ? Math.sqrt(value) : value / lower[column]![column]!;
    }
  });
  return lower;
}

/** Plain normal draws by Box and Muller, from a Mersenne twister. */
function boxMuller(seed: number): () => number {
  const generator = mersenne(seed);
  let kept: number | undefined;
  return () => {
    if (kept !== undefined) {
      const value = kept;
      kept = undefined;
      return value;
    }
    const size = Math.sqrt(-2 * Math.log(1 - uniformFloat64(generator)));
    const turn = 2 * Math.PI * uniformFloat64(generator);
    kept = size * Math.sin(turn);
    return size * Math.cos(turn);
  };
}
