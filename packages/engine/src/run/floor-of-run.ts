import { drawStream } from '../numeric/index.ts';
import { drawSeamCourses, type FloorShops, type PlanOutcome } from '../plan/index.ts';
import {
  beliefOfElectrode,
  depthCeiling,
  depthRegressors,
  predictWidth,
  type RemovalBelief,
} from '../removal/index.ts';
import type { DepthAlong } from './depth-along.ts';
import { type ReadBefore, type RunShops, shopsOfRun } from './shops-of-run.ts';

/** Courses drawn per layer, shared out over the shops [-]. */
const COURSES = 256;
/** Distance between the seeds of two layers. */
const STRIDE = 15_731;
/**
 * Parts of a window's median energy outside which a cell is looked at by itself [-]: one row of a slow logger moves a cell
 * by less, a carriage that stood or an arc that went by more (judgement).
 */
const EVEN = { least: 0.6, most: 1.25 } as const;
/** Series of draws of the error of a reading. */
const GAUGE = 903;

/** What a floor is drawn from. */
export interface FloorSource {
  readonly along: DepthAlong;
  readonly plan: PlanOutcome;
  /** What is known of removal, as the plan was made with. */
  readonly belief: RemovalBelief;
  /** Push angle [rad]. */
  readonly pushAngle: number;
  /** What the trial or run-in read, where the travel that was run tells it. */
  readonly read?: ReadBefore | undefined;
}

/**
 * The floor that a log leaves at some places, and how passes cut from here on, in shops drawn from what is known of
 * removal: what is not known of the shop and the job is common to the passes that were run and to those to come.
 *
 * @param source - depth along the seam, plan and belief [record], of one job
 * @param cells - cells of the seam [list], rising
 * @param count - how many shops [-], at least 1
 * @param seed - the seed [-], a whole number from 0 to 2^30
 * @returns the floor in shops [record]
 * @source log-linear law in the specific energy with four levels of spread: see `publishedBelief`
 * @example
 * const along = { cell: 0.01, cells: 100, layers: [[new Float64Array(100).fill(5e5)]] };
 * floorOfRun({ along, plan: demoAnswer.basis.plan, belief: publishedBelief(metalOf('carbon_steel'), 'flat'), pushAngle: 0.785 }, [5, 50], 3, 1).depth.length // => 6
 */
export function floorOfRun(
  { along, plan, belief, pushAngle, read }: FloorSource,
  cells: readonly number[],
  count: number,
  seed: number,
): FloorShops {
  const known = beliefOfElectrode(belief, plan.electrode);
  const shops = shopsOfRun(plan, belief, pushAngle, read, count, seed);
  const { diameter } = plan.electrode;
  const { meltingEnergy } = known;
  const [first] = plan.passes;
  const power = (first?.current ?? 1) * (first?.voltage ?? 1);
  const at = Float64Array.from(cells, (cell) => (cell + 0.5) * along.cell);
  const lnUnit = Math.log(power / (diameter ** 2 * meltingEnergy));
  const width = predictWidth(known, diameter).p50;
  const partsOf = (series: number, tracks: number): Float64Array =>
    partsCut(shops, at, belief.seamRange, series, tracks, seed);

  const depth = new Float64Array(count * at.length);
  along.layers.forEach((tracks, layer) => {
    const parts = partsOf(layer, tracks.length);
    for (const energies of tracks) {
      cells.forEach((cell, place) => {
        const energy = energies[cell]!;
        if (!(energy > 0)) return;
        const setting = { diameter, current: 1, voltage: energy, travel: 1, pushAngle };
        const lnEnergy = depthRegressors(setting, meltingEnergy)[1]!;
        const most = depthCeiling(setting, width, meltingEnergy);
        for (let shop = 0; shop < count; shop += 1) {
          const o = shop * at.length + place;
          const middle = diameter * Math.exp(shops.level[shop]! + shops.slope[shop]! * lnEnergy);
          depth[o]! += Math.min(most, middle * parts[o]!) / tracks.length;
        }
      });
    }
  });
  const made = new Map<number, Float64Array>();
  return {
    count,
    at,
    depth,
    lift: shops.level.map((level, shop) => Math.log(diameter) + level + shops.slope[shop]! * lnUnit),
    power: shops.slope,
    further: (pass) => {
      const before = made.get(pass);
      if (before !== undefined) return before;
      const fresh = partsOf(along.layers.length + pass, plan.pattern.tracks);
      made.set(pass, fresh);
      return fresh;
    },
    gaugeError: shops.normals(GAUGE),
  };
}

/** Part of its middle that a layer cuts at each place in each shop: pass and course along the seam, and the factor of later passes. */
function partsCut(
  shops: RunShops,
  at: Float64Array,
  range: number,
  layer: number,
  tracks: number,
  seed: number,
): Float64Array {
  const courses = Math.min(COURSES, shops.count);
  const course = drawSeamCourses(at, range, courses, drawStream((seed + (layer + 1) * STRIDE) % 2 ** 31));
  const noise = shops.normals(layer);
  const parts = new Float64Array(shops.count * at.length);
  for (let shop = 0; shop < shops.count; shop += 1) {
    // of several tracks side by side the mean counts: what each has for itself levels out
    const pass = (shops.passSd[shop]! * noise[shop]!) / Math.sqrt(tracks);
    const seam = shops.seamSd[shop]! / Math.sqrt(tracks);
    const own = (layer === 0 ? 1 : shops.laterFactor[shop]!) * Math.exp(pass);
    const o = shop * at.length;
    const c = shops.courseOf(layer, shop, courses) * at.length;
    for (let place = 0; place < at.length; place += 1)
      parts[o + place] = own * Math.exp(seam * course[c + place]!);
  }
  return parts;
}

/**
 * Cells of the seam to look at: of each short window the one in the middle of what was put in, and those that most and
 * least was put into where it was much more or less.
 *
 * @param along - depth along the seam [record], from `depthAlong`
 * @param from - first place [m], from 0
 * @param to - last place [m], above `from`
 * @param window - length of a window [m], > 0
 * @returns cells, rising [list]
 * @source Jugel, Jerzak, Hackenbroich and Markl, PVLDB 7 (2014) 797-808: extremes per window
 * @example
 * cellsToLookAt({ cell: 0.1, cells: 4, layers: [[[1, 3, 2, 2]]] }, 0, 0.4, 0.4) // => [0, 1, 2]
 */
export function cellsToLookAt(
  {
    cell,
    cells,
    layers,
  }: Pick<DepthAlong, 'cell' | 'cells'> & {
    readonly layers: DepthAlong['layers'] | readonly (readonly number[][])[];
  },
  from: number,
  to: number,
  window: number,
): number[] {
  const energyIn = (at: number): number =>
    layers.reduce((sum, tracks) => sum + tracks.reduce((own, track) => own + track[at]!, 0), 0);
  const first = Math.max(0, Math.round(from / cell));
  const last = Math.min(cells, Math.max(first + 1, Math.round(to / cell)));
  const each = Math.max(1, Math.round(window / cell));
  const found: number[] = [];
  for (let start = first; start < last; start += each) {
    const end = Math.min(last, start + each);
    const order = Array.from({ length: end - start }, (_, i) => start + i).sort(
      (a, b) => energyIn(a) - energyIn(b) || a - b,
    );
    const middle = order[Math.floor(order.length / 2)]!;
    const usual = energyIn(middle);
    const looked = new Set([middle]);
    if (energyIn(order[0]!) < EVEN.least * usual) looked.add(order[0]!);
    if (energyIn(order.at(-1)!) > EVEN.most * usual) looked.add(order.at(-1)!);
    found.push(...[...looked].sort((a, b) => a - b));
  }
  return found;
}
