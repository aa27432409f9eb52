import type { BayPoint, StationTask } from './bay.ts';
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
import type { Block } from './station-grid.ts';

/** Distance between the points of the seam that ways are measured to [m]; half of it is added to what is needed. */
const SEAM_STEP = 0.25;

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
  readonly source: Spread;
  readonly air: Spread;
  readonly seam: readonly Spread[];
  readonly clamp: Way | undefined;
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
  const grounds = [groundOf(bay.outline, obstacles)];
  if (walkways.length > 0) grounds.push(groundOf(bay.outline, [...obstacles, ...walkways]));
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
  const source = spreadFrom(ground, bay.powerSource);
  return {
    ground,
    source,
    air: spreadFrom(ground, bay.airDrop),
    seam: seam.map((point) => spreadFrom(ground, point)),
    clamp: bay.workClamp && wayTo(ground, bay.workClamp, sightsFrom(ground, bay.workClamp), source),
  };
}

function alongSeam(seam: readonly BayPoint[]): {
  readonly points: readonly BayPoint[];
  readonly margin: number;
} {
  let margin = 0;
  const points = seam.slice(1).flatMap((b, i) => {
    const a = seam[i]!;
    const parts = Math.max(1, Math.ceil(distanceOf(a, b) / SEAM_STEP));
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
  return free && bay.seam.slice(1).every((b, i) => distanceToSegment(point, bay.seam[i]!, b) >= bay.keepOut);
}

/** Ways from a station: under covers where stock has enough, else around every walkway; undefined where neither is possible. */
export function waysFrom(scene: Scene, station: BayPoint): StationWays | undefined {
  for (const [i, layer] of scene.layers.entries()) {
    const ways = waysOn(scene, layer, station, i === 0);
    if (ways.covers <= scene.task.stock.covers) return ways;
  }
  return undefined;
}

function waysOn(scene: Scene, layer: Layer, station: BayPoint, mayCross: boolean): StationWays {
  const sights = sightsFrom(layer.ground, station);
  const to = (spread: Spread): Way => wayTo(layer.ground, station, sights, spread);
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
