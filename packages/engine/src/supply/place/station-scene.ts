import type { BayPoint, StationTask } from './bay.ts';
import { inJet } from './jet.ts';
import { type Picked, pick, type Shelf, shelfOf } from './pick.ts';
import { distanceOf, distanceToEdges, distanceToSegment, sideOf } from './plane.ts';
import {
  crossingsOf,
  type Ground,
  groundOf,
  type Spread,
  sightsFrom,
  spreadFrom,
  type Way,
  wayTo,
} from './route.ts';
import { accessesOf, seamBand } from './seam-band.ts';
import type { Block } from './station-grid.ts';

/** Distance between the points of the seam that ways are measured to [m]; half of it is added to what is needed. */
const SEAM_STEP = 0.25;
/** Points of the seam that ways are measured to at most, whatever its length [-]. */
const SEAM_POINTS_MOST = 40;

/** Ways from one station. */
export interface StationWays {
  readonly fromSource: Way;
  readonly fromAir: Way;
  /** To the point of the seam that is farthest. */
  readonly toSeam: Way;
  /** From the source to the work clamp; undefined where that is not picked here. */
  readonly toClamp: Way | undefined;
  /** Covers that these ways need [-]. */
  readonly covers: number;
}

/** Lengths that leads and hoses must have, by run [m]. */
export interface Needs {
  readonly leads: readonly number[];
  readonly hoses: readonly number[];
}

/** One layer of the bay: walkways that may be crossed under covers, or not at all. */
interface Layer {
  readonly ground: Ground;
  readonly source: Target;
  readonly air: Target;
  readonly seam: readonly Target[];
  readonly clamp: Way | undefined;
  /** Whether source, air drop, seam and clamp are joined to each other: where they are not, no station is to all of them. */
  readonly joined: boolean;
}

/** A point that ways lead to, with the places at which they come to it. */
interface Target {
  readonly at: BayPoint;
  readonly spreads: readonly Spread[];
}

/** Everything about a task that does not depend on where the station stands. */
export interface Scene {
  readonly task: StationTask;
  readonly columns: number;
  readonly rows: number;
  /** Corner of the grid. */
  readonly origin: BayPoint;
  readonly seam: readonly BayPoint[];
  /** Longest distance along the seam from a measured point [m]. */
  readonly seamMargin: number;
  readonly layers: readonly Layer[];
  readonly leads: Shelf;
  readonly hoses: Shelf;
}

/** Prepares a task; undefined where stock has too many combinations. */
export function sceneOf(task: StationTask): Scene | undefined {
  const { bay, stock } = task;
  const square = task.current ** 2;
  const leads = shelfOf(
    stock.leads.map(({ length, count, resistance }) => ({
      length,
      count,
      loss: square * resistance * length,
    })),
    square * task.jointResistance,
  );
  const hoses = shelfOf(
    stock.hoses.map(({ length, count, pressureLoss }) => ({
      length,
      count,
      loss: task.pressureWeight * pressureLoss * length,
    })),
    task.pressureWeight * task.jointPressureLoss,
  );
  if (leads === undefined || hoses === undefined) return undefined;
  const xs = bay.outline.map(({ x }) => x);
  const ys = bay.outline.map(({ y }) => y);
  const { points, margin } = alongSeam(bay.seam);
  const obstacles = bay.obstacles.map(({ corners }) => corners);
  const walkways = bay.walkways.map(({ corners }) => corners);
  const band = seamBand(bay.seam, bay.leadClearance ?? 0);
  const grounds = [groundOf(bay.outline, [...obstacles, ...band])];
  if (walkways.length > 0) grounds.push(groundOf(bay.outline, [...obstacles, ...band, ...walkways]));
  return {
    task,
    columns: Math.max(1, Math.ceil((Math.max(...xs) - Math.min(...xs)) / task.grid)),
    rows: Math.max(1, Math.ceil((Math.max(...ys) - Math.min(...ys)) / task.grid)),
    origin: { x: Math.min(...xs), y: Math.min(...ys) },
    seam: points,
    seamMargin: margin,
    layers: grounds.map((ground) => layerOf(ground, task, points)),
    leads,
    hoses,
  };
}

function layerOf(ground: Ground, { bay }: StationTask, seam: readonly BayPoint[]): Layer {
  const target = (at: BayPoint): Target => ({
    at,
    spreads: accessesOf(at, bay.seam, bay.leadClearance ?? 0).map((access) => spreadFrom(ground, access)),
  });
  const source = target(bay.powerSource);
  const air = target(bay.airDrop);
  const along = seam.map(target);
  const clamp = bay.workClamp && betweenTargets(ground, target(bay.workClamp), source);
  const ways = [air, ...along].map((each) => betweenTargets(ground, each, source));
  const joined = [...ways, ...(clamp === undefined ? [] : [clamp])].every(({ length }) => length < Infinity);
  return { ground, source, air, seam: along, clamp, joined };
}

/** The layers in which a station can be joined to everything with the covers there are, the shorter ways first. */
function usableLayers({
  layers,
  task,
}: Scene): readonly { readonly layer: Layer; readonly mayCross: boolean }[] {
  const [crossed, around] = layers;
  // Where nothing leads around the walkways, one has to be crossed.
  const inVain = around !== undefined && !around.joined && task.stock.covers === 0;
  return [
    ...(crossed!.joined && !inVain ? [{ layer: crossed!, mayCross: true }] : []),
    ...(around?.joined === true ? [{ layer: around, mayCross: false }] : []),
  ];
}

/** Whether any station could be joined to everything. */
export function canBeJoined(scene: Scene): boolean {
  return usableLayers(scene).length > 0;
}

/** The shortest way from a point, whose sights are known, to a target. */
function wayToTarget(
  ground: Ground,
  from: BayPoint,
  sights: ReturnType<typeof sightsFrom>,
  { at, spreads }: Target,
): Way {
  const ways = spreads.map((spread) => {
    const way = wayTo(ground, from, sights, spread);
    const last = distanceOf(spread.origin, at);
    return last === 0 ? way : { length: way.length + last, points: [...way.points, at] };
  });
  return ways.reduce((shortest, way) => (way.length < shortest.length ? way : shortest));
}

/** The shortest way from one target to another. */
function betweenTargets(ground: Ground, from: Target, to: Target): Way {
  const ways = from.spreads.map(({ origin }) => {
    const way = wayToTarget(ground, origin, sightsFrom(ground, origin), to);
    const first = distanceOf(from.at, origin);
    return first === 0 ? way : { length: way.length + first, points: [from.at, ...way.points] };
  });
  return ways.reduce((shortest, way) => (way.length < shortest.length ? way : shortest));
}

function alongSeam(seam: readonly BayPoint[]): {
  readonly points: readonly BayPoint[];
  readonly margin: number;
} {
  let margin = 0;
  const whole = seam.slice(1).reduce((sum, b, i) => sum + distanceOf(seam[i]!, b), 0);
  const step = Math.max(SEAM_STEP, whole / SEAM_POINTS_MOST);
  const points = seam.slice(1).flatMap((b, i) => {
    const a = seam[i]!;
    const parts = Math.max(1, Math.ceil(distanceOf(a, b) / step));
    margin = Math.max(margin, distanceOf(a, b) / parts / 2);
    return Array.from({ length: parts }, (_, k) => ({
      x: a.x + ((b.x - a.x) * (k + 1)) / parts,
      y: a.y + ((b.y - a.y) * (k + 1)) / parts,
    }));
  });
  return { points: [seam[0]!, ...points], margin };
}

/** Middle of a cell. */
export function cellPoint({ origin, task }: Scene, column: number, row: number): BayPoint {
  return { x: origin.x + (column + 0.5) * task.grid, y: origin.y + (row + 0.5) * task.grid };
}

/** Whether a station may stand at a point. */
export function mayStand({ task }: Scene, point: BayPoint): boolean {
  const { bay } = task;
  if (sideOf(point, bay.outline) !== 'inside' || distanceToEdges(point, bay.outline) < bay.clearance)
    return false;
  const areas = [...bay.obstacles, ...bay.walkways, bay.workpiece];
  const free = areas.every(
    ({ corners }) => sideOf(point, corners) === 'outside' && distanceToEdges(point, corners) >= bay.clearance,
  );
  if (!free || (bay.jet !== undefined && inJet(point, bay.seam, bay.jet))) return false;
  const clear = Math.max(bay.keepOut, bay.leadClearance ?? 0);
  return bay.seam.slice(1).every((b, i) => distanceToSegment(point, bay.seam[i]!, b) >= clear);
}

/** Ways from a station: under covers where stock has enough, else around every walkway; undefined where neither is possible. */
export function waysFrom(scene: Scene, station: BayPoint): StationWays | undefined {
  for (const { layer, mayCross } of usableLayers(scene)) {
    const ways = waysOn(scene, layer, station, mayCross);
    if (ways.covers <= scene.task.stock.covers) return ways;
  }
  return undefined;
}

function waysOn(scene: Scene, layer: Layer, station: BayPoint, mayCross: boolean): StationWays {
  const sights = sightsFrom(layer.ground, station);
  const to = (target: Target): Way => wayToTarget(layer.ground, station, sights, target);
  const seam = layer.seam.map(to);
  const toSeam = seam.reduce((farthest, way) => (way.length > farthest.length ? way : farthest));
  const fromSource = to(layer.source);
  const fromAir = to(layer.air);
  const walkways = scene.task.bay.walkways.map(({ corners }) => corners);
  const covers = (way: Way): number => (mayCross ? crossingsOf(way.points, walkways) : 0);
  return {
    fromSource,
    fromAir,
    toSeam,
    toClamp: layer.clamp,
    covers:
      covers(fromSource) +
      covers(fromAir) +
      Math.max(...seam.map(covers)) +
      (layer.clamp === undefined ? 0 : covers(layer.clamp)),
  };
}

/** Lengths needed for ways of these lengths, slack and tail included. */
function needsOf(scene: Scene, source: number, air: number, seam: number, clamp: number | undefined): Needs {
  const { slack, tail } = scene.task;
  const laid = (way: number): number => way * (1 + slack) + tail;
  const toSeam = laid(seam + scene.seamMargin);
  const back = clamp === undefined ? [] : [laid(clamp)];
  return { leads: [laid(source), toSeam, ...back], hoses: [laid(air), toSeam] };
}

/** Needs of the ways from a station. */
export function needsOfWays(scene: Scene, ways: StationWays): Needs {
  const { fromSource, fromAir, toSeam, toClamp } = ways;
  return needsOf(scene, fromSource.length, fromAir.length, toSeam.length, toClamp?.length);
}

/** Needs that every station in a block has at least: straight lines from its nearest edge. */
export function leastNeeds(scene: Scene, block: Block): Needs {
  const { origin, task, seam } = scene;
  const low = { x: origin.x + (block.left + 0.5) * task.grid, y: origin.y + (block.low + 0.5) * task.grid };
  const high = {
    x: origin.x + (block.right - 0.5) * task.grid,
    y: origin.y + (block.high - 0.5) * task.grid,
  };
  const away = (p: BayPoint): number =>
    // A hair less than computed, so that rounding never makes the bound the larger of two equal ways.
    (1 - 1e-12) * Math.hypot(Math.max(low.x - p.x, 0, p.x - high.x), Math.max(low.y - p.y, 0, p.y - high.y));
  const clamp = scene.layers[0]!.clamp;
  return needsOf(
    scene,
    away(task.bay.powerSource),
    away(task.bay.airDrop),
    Math.max(...seam.map(away)),
    clamp && clamp.length * (1 - 1e-12),
  );
}

/** Picks of least loss for needs; undefined where stock does not do. */
export function pickFor(
  scene: Scene,
  needs: Needs,
): { readonly leads: Picked; readonly hoses: Picked } | undefined {
  const leads = pick(scene.leads, needs.leads);
  const hoses = leads && pick(scene.hoses, needs.hoses);
  return leads && hoses && { leads, hoses };
}
