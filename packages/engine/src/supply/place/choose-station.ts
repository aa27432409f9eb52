import type { Issue, Outcome } from '../../issue/index.ts';
import type { BayPoint, Counts, StationTask } from './bay.ts';
import { checkPlace } from './check-place.ts';
import { pick } from './pick.ts';
import { placeCautions } from './place-cautions.ts';
import { bestCell, type GridSearch, type Score } from './station-grid.ts';
import {
  canBeJoined,
  cellPoint,
  leastNeeds,
  mayStand,
  type Needs,
  needsOfWays,
  pickFor,
  type Scene,
  type StationWays,
  sceneOf,
  waysFrom,
} from './station-scene.ts';

/** Leads or hoses of one kind, for the pick list. */
export interface PickedKind {
  readonly id: string;
  /** How many [-]. */
  readonly count: number;
  /** Length of one [m]. */
  readonly length_m: number;
}

/** One run of the pick list. */
export interface PickedRun {
  readonly run: 'source to station' | 'station to seam' | 'source to work clamp' | 'air drop to station';
  readonly of: 'lead' | 'hose';
  readonly pieces: readonly PickedKind[];
  /** Length that the way asks for, slack and tail included [m]. */
  readonly needed_m: number;
  /** Length of the pieces together [m]. */
  readonly length_m: number;
  /** Length left over: how much farther it would reach [m]. */
  readonly margin_m: number;
  /** Joints between the pieces [-]. */
  readonly joints: number;
  /** Cleats along the way [-]. */
  readonly cleats: number;
  /** Loss of this run as the objective counts it [W]. */
  readonly loss_W: number;
  /** Corners of the way, from the station. */
  readonly way: readonly BayPoint[];
}

/** Where the station stands, and what is laid to and from it. */
export interface StationChoice {
  readonly station: BayPoint;
  /** Objective: current squared times resistance, and pressure lost times its weight [W]. */
  readonly loss_W: number;
  readonly runs: readonly PickedRun[];
  /** What is left in stock. */
  readonly left: readonly PickedKind[];
  /** Covers used on walkways [-]. */
  readonly covers: number;
  /** How much farther than every point of the seam the shorter of lead and hose would reach [m]. */
  readonly reach_margin_m: number;
  /** What stands or lies in the jet or beside the seam, in words. */
  readonly cautions: readonly string[];
  /** Places of the grid [-]. */
  readonly places: number;
  /** Places judged one by one; the others are ruled out by a bound [-]. */
  readonly places_judged: number;
}

/**
 * The place in the bay where the control station stands with the least loss in leads and hoses from stock.
 *
 * Loss is I^2 R of the picked leads and their joints, plus the pressure lost in the picked hoses times a weight;
 * among places of equal loss the shortest ways win. Ways are shortest ones around obstacles; walkways are crossed
 * under covers, or avoided altogether where there are too few. Exact on the grid, by branch and bound.
 *
 * @param task - bay, stock, current and practice of laying [record], see StationTask
 * @returns station and pick list, or what prevents it [record]
 * @source geometry; slack, tail and cleats: common practice, no source
 * @example
 * const bay = { outline: [{ x: 0, y: 0 }, { x: 12, y: 0 }, { x: 12, y: 8 }, { x: 0, y: 8 }], obstacles: [], walkways: [], powerSource: { x: 0.5, y: 4 }, airDrop: { x: 0.5, y: 5 }, workpiece: { id: 'plate', corners: [{ x: 8, y: 3 }, { x: 11, y: 3 }, { x: 11, y: 5 }, { x: 8, y: 5 }] }, seam: [{ x: 8.2, y: 4 }, { x: 10.8, y: 4 }], keepOut: 1.5, clearance: 0.5 };
 * const stock = { leads: [{ id: '10 m', length: 10, count: 2, resistance: 0.0002 }], hoses: [{ id: '10 m', length: 10, count: 2, pressureLoss: 1000 }], covers: 0 };
 * chooseStation({ bay, stock, current: 400, jointResistance: 1e-4, jointPressureLoss: 500, pressureWeight: 0.003, grid: 0.5, ...LAYING_PRACTICE }).value.loss_W // => 700
 */
export function chooseStation(task: StationTask): Outcome<StationChoice> {
  const wrong = checkPlace(task);
  if (wrong.length > 0) return { ok: false, issues: wrong };
  const scene = sceneOf(task);
  if (scene === undefined) return { ok: false, issues: [tooManyCombinations()] };
  const search = searchLeast(scene);
  if (search.best === undefined) {
    // Beside the seam is better than not at all, and is cautioned.
    const close = withoutBand(task);
    const found = close === undefined ? undefined : chooseStation(close);
    return found?.ok === true ? besideSeam(task, found.value) : { ok: false, issues: [noReach(scene)] };
  }
  const { column, row } = search.best;
  return { ok: true, value: choiceOf(scene, cellPoint(scene, column, row), search) };
}

/**
 * What is laid where the control station stands at a stated place.
 *
 * As chooseStation, for this one place. Where leads or hoses do not reach, or the station may not stand there, that is
 * the answer.
 *
 * @param task - bay, stock, current and practice of laying [record], see StationTask
 * @param station - where it stands, x and y from the bay's origin [m], inside the bay
 * @returns pick list at that place, or what prevents it [record]
 * @source as chooseStation
 * @example
 * const bay = { outline: [{ x: 0, y: 0 }, { x: 12, y: 0 }, { x: 12, y: 8 }, { x: 0, y: 8 }], obstacles: [], walkways: [], powerSource: { x: 0.5, y: 4 }, airDrop: { x: 0.5, y: 5 }, workpiece: { id: 'plate', corners: [{ x: 8, y: 3 }, { x: 11, y: 3 }, { x: 11, y: 5 }, { x: 8, y: 5 }] }, seam: [{ x: 8.2, y: 4 }, { x: 10.8, y: 4 }], keepOut: 1.5, clearance: 0.5 };
 * const stock = { leads: [{ id: '10 m', length: 10, count: 2, resistance: 0.0002 }], hoses: [{ id: '10 m', length: 10, count: 2, pressureLoss: 1000 }], covers: 0 };
 * stationAt({ bay, stock, current: 400, jointResistance: 1e-4, jointPressureLoss: 500, pressureWeight: 0.003, grid: 0.5, ...LAYING_PRACTICE }, { x: 5, y: 4 }).value.loss_W // => 700
 */
export function stationAt(task: StationTask, station: BayPoint): Outcome<StationChoice> {
  const choice = stationWithin(task, station);
  const close = choice.ok ? undefined : withoutBand(task);
  const found = close === undefined ? choice : stationWithin(close, station);
  return found.ok ? besideSeam(task, found.value) : choice;
}

/** The pick list at a place, with the band along the seam as the task has it. */
function stationWithin(task: StationTask, station: BayPoint): Outcome<StationChoice> {
  const wrong = checkPlace(task);
  if (wrong.length > 0) return { ok: false, issues: wrong };
  const scene = sceneOf(task);
  if (scene === undefined) return { ok: false, issues: [tooManyCombinations()] };
  const refuse = (code: 'PLACE_VALUE' | 'PLACE_NO_REACH', message: string): Outcome<never> => ({
    ok: false,
    issues: [{ code, path: 'bay.station', message }],
  });
  const at = `${station.x.toFixed(2)} m, ${station.y.toFixed(2)} m`;
  if (!mayStand(scene, station)) {
    const { keepOut, clearance } = task.bay;
    return refuse(
      'PLACE_VALUE',
      `The station cannot stand at ${at}: it keeps ${keepOut} m from the seam, ${clearance} m from all else, and clear of where the jet throws.`,
    );
  }
  const ways = waysFrom(scene, station);
  if (ways === undefined)
    return refuse('PLACE_NO_REACH', `From ${at} walkways would be crossed, and there are not covers enough.`);
  const needs = needsOfWays(scene, ways);
  if (pickFor(scene, needs) === undefined)
    return refuse('PLACE_NO_REACH', `The station at ${at} is out of reach: ${shortWords(scene, needs)}.`);
  return { ok: true, value: choiceOf(scene, station, { judged: 1 }) };
}

/** The task with leads and hoses free to run beside the seam; undefined where they are. */
function withoutBand(task: StationTask): StationTask | undefined {
  const { leadClearance = 0, ...bay } = task.bay;
  return leadClearance === 0 ? undefined : { ...task, bay };
}

/** A choice made without the band, with what runs beside the seam. */
function besideSeam(task: StationTask, choice: StationChoice): Outcome<StationChoice> {
  return { ok: true, value: { ...choice, cautions: cautionsOf(task, choice.runs) } };
}

function cautionsOf({ bay }: StationTask, runs: readonly PickedRun[]): readonly string[] {
  // Lead and hose of one name lie side by side.
  return [
    ...new Set(
      placeCautions(
        bay,
        runs.map(({ run, way }) => ({ name: run, way })),
      ),
    ),
  ];
}

/** The place of least loss; no best where none is possible. */
function searchLeast(scene: Scene): GridSearch {
  if (!canBeJoined(scene)) return { best: undefined, judged: 0, ruledOut: 0 };
  return bestCell({
    columns: scene.columns,
    rows: scene.rows,
    bound: (block) => lossScore(scene, leastNeeds(scene, block)),
    score: (column, row) => judge(scene, column, row, lossScore),
  });
}

/** Score of a cell; undefined where no station can stand or covers do not do. */
export function judge(
  scene: Scene,
  column: number,
  row: number,
  score: (scene: Scene, needs: Needs) => Score,
): Score | undefined {
  const point = cellPoint(scene, column, row);
  const ways = mayStand(scene, point) ? waysFrom(scene, point) : undefined;
  return ways && score(scene, needsOfWays(scene, ways));
}

/** Loss first, length needed next. */
export function lossScore(scene: Scene, needs: Needs): Score {
  const picked = pickFor(scene, needs);
  const length = [...needs.leads, ...needs.hoses].reduce((sum, need) => sum + need, 0);
  return [picked === undefined ? Number.POSITIVE_INFINITY : picked.leads.loss + picked.hoses.loss, length];
}

/** Length by which every need must fall before stock does, leads and hoses each by itself. */
function shortages(scene: Scene, needs: Needs): { readonly leads: number; readonly hoses: number } {
  const short = (shelf: Scene['leads'], of: readonly number[]): number => {
    const does = (less: number): boolean =>
      pick(
        shelf,
        of.map((need) => need - less),
      ) !== undefined;
    if (does(0)) return 0;
    const most = Math.max(...of);
    if (!Number.isFinite(most) || !does(most)) return Number.POSITIVE_INFINITY;
    let [low, high] = [0, most];
    while (high - low > 1e-3) {
      const middle = (low + high) / 2;
      if (does(middle)) high = middle;
      else low = middle;
    }
    return high;
  };
  return { leads: short(scene.leads, needs.leads), hoses: short(scene.hoses, needs.hoses) };
}

/** How much stock falls short of needs, in words. */
function shortWords(scene: Scene, needs: Needs): string {
  const { leads, hoses } = shortages(scene, needs);
  const parts = [
    ...(leads > 0 ? [`each run of leads is up to ${leads.toFixed(1)} m short`] : []),
    ...(hoses > 0 ? [`each run of hoses is up to ${hoses.toFixed(1)} m short`] : []),
  ];
  return parts.every((part) => !part.includes('Infinity'))
    ? parts.join(' and ')
    : 'there are too few pieces in stock';
}

function shortScore(scene: Scene, needs: Needs): Score {
  const { leads, hoses } = shortages(scene, needs);
  return [Math.max(leads, hoses), leads + hoses];
}

/** Why no place does, and how much is short where least is. */
function noReach(scene: Scene): Issue {
  const issue = (message: string, path: string): Issue => ({ code: 'PLACE_NO_REACH', path, message });
  if (!canBeJoined(scene)) return issue(whyNone(scene), 'bay');
  return lookedAt(coarse(scene), issue);
}

/** Places that a refusal looks at for what is short: enough to tell, and no long work for nothing. */
const REFUSAL_PLACES_MOST = 400;

/** The scene on a grid of few places. */
function coarse(scene: Scene): Scene {
  const { columns, rows, task } = scene;
  const times = Math.ceil(Math.sqrt((columns * rows) / REFUSAL_PLACES_MOST));
  if (times <= 1) return scene;
  return {
    ...scene,
    columns: Math.ceil(columns / times),
    rows: Math.ceil(rows / times),
    task: { ...task, grid: task.grid * times },
  };
}

function lookedAt(scene: Scene, issue: (message: string, path: string) => Issue): Issue {
  const search = bestCell({
    columns: scene.columns,
    rows: scene.rows,
    bound: (block) => shortScore(scene, leastNeeds(scene, block)),
    score: (column, row) => judge(scene, column, row, shortScore),
  });
  if (search.best !== undefined) {
    const point = cellPoint(scene, search.best.column, search.best.row);
    const at = `At the best place, ${point.x.toFixed(2)} m, ${point.y.toFixed(2)} m,`;
    const short = shortWords(scene, needsOfWays(scene, waysFrom(scene, point)!));
    return issue(`No place reaches every point of the seam. ${at} ${short}.`, 'stock');
  }
  return issue(whyNone(scene), 'bay');
}

function whyNone(whole: Scene): string {
  const scene = coarse(whole);
  const { columns, rows, task } = scene;
  const standing: BayPoint[] = [];
  for (let column = 0; column < columns; column += 1) {
    for (let row = 0; row < rows; row += 1) {
      const point = cellPoint(scene, column, row);
      if (mayStand(scene, point)) standing.push(point);
    }
  }
  if (standing.length === 0) {
    return `No place in the bay keeps ${task.bay.keepOut} m from the seam and ${task.bay.clearance} m from all else and clear of where the jet throws: lower a distance, clear the bay, or run the seam the other way.`;
  }
  const uncovered = {
    ...scene,
    task: { ...task, stock: { ...task.stock, covers: Number.POSITIVE_INFINITY } },
  };
  const covers = standing.flatMap((point) => {
    const ways = waysFrom(uncovered, point);
    return ways && shortScore(uncovered, needsOfWays(uncovered, ways))[0] === 0 ? [ways.covers] : [];
  });
  if (covers.length > 0) {
    return `Leads and hoses would reach, but only across walkways: ${Math.min(...covers)} covers are needed and ${task.stock.covers} are in stock.`;
  }
  const kinds = [
    ...(task.stock.leads.every(({ count }) => count === 0) ? ['leads'] : []),
    ...(task.stock.hoses.every(({ count }) => count === 0) ? ['hoses'] : []),
  ];
  if (kinds.length > 0) return `There are no ${kinds.join(' and no ')} in stock.`;
  return 'No place is joined to the power source, the air drop and the seam, with as many pieces as there are runs: look for obstacles that close off a part of the bay, and for too few leads or hoses.';
}

function tooManyCombinations(): Issue {
  const message =
    'Leads or hoses in stock can be joined in more than 5000 ways; leave out kinds that will not be used.';
  return { code: 'SEARCH_TOO_LARGE', path: 'stock', message };
}

function choiceOf(scene: Scene, station: BayPoint, search: Pick<GridSearch, 'judged'>): StationChoice {
  const { task } = scene;
  const ways = waysFrom(scene, station)!;
  const needs = needsOfWays(scene, ways);
  const picked = pickFor(scene, needs)!;
  const leadRuns = leadNames(ways).map((run, i) =>
    runOf(scene, 'lead', run, picked.leads.runs[i]!, needs.leads[i]!, wayOf(ways, run)),
  );
  const hoseNames = ['air drop to station', 'station to seam'] as const;
  const hoseRuns = hoseNames.map((run, i) =>
    runOf(scene, 'hose', run, picked.hoses.runs[i]!, needs.hoses[i]!, wayOf(ways, run)),
  );
  const runs = [...leadRuns, ...hoseRuns];
  const toSeam = runs.filter(({ run }) => run === 'station to seam');
  return {
    station,
    loss_W: picked.leads.loss + picked.hoses.loss,
    runs,
    left: [...leftOf(task.stock.leads, picked.leads.runs), ...leftOf(task.stock.hoses, picked.hoses.runs)],
    covers: ways.covers,
    reach_margin_m: Math.min(...toSeam.map(({ margin_m }) => margin_m)),
    cautions: cautionsOf(task, runs),
    places: scene.columns * scene.rows,
    places_judged: search.judged,
  };
}

function leadNames({ toClamp }: StationWays): PickedRun['run'][] {
  return ['source to station', 'station to seam', ...(toClamp ? (['source to work clamp'] as const) : [])];
}

function wayOf(ways: StationWays, run: PickedRun['run']): readonly BayPoint[] {
  if (run === 'source to station') return ways.fromSource.points;
  if (run === 'air drop to station') return ways.fromAir.points;
  return run === 'station to seam' ? ways.toSeam.points : (ways.toClamp?.points ?? []);
}

function runOf(
  scene: Scene,
  of: 'lead' | 'hose',
  run: PickedRun['run'],
  counts: Counts,
  needed: number,
  way: readonly BayPoint[],
): PickedRun {
  const { task, leads, hoses } = scene;
  const kinds = of === 'lead' ? task.stock.leads : task.stock.hoses;
  const shelf = of === 'lead' ? leads : hoses;
  const pieces = kinds.flatMap(({ id, length }, k) =>
    counts[k]! > 0 ? [{ id, count: counts[k]!, length_m: length }] : [],
  );
  const number = counts.reduce((sum, n) => sum + n, 0);
  const length = pieces.reduce((sum, piece) => sum + piece.count * piece.length_m, 0);
  const own = counts.reduce((sum, n, k) => sum + n * shelf.pieces[k]!.loss, 0);
  const joint =
    of === 'lead' ? task.current ** 2 * task.jointResistance : task.pressureWeight * task.jointPressureLoss;
  return {
    run,
    of,
    pieces,
    needed_m: needed,
    length_m: length,
    margin_m: length - needed,
    joints: number - 1,
    cleats: Math.ceil(length / task.cleatEvery),
    loss_W: own + (number - 1) * joint,
    way,
  };
}

function leftOf(
  kinds: readonly { readonly id: string; readonly length: number; readonly count: number }[],
  runs: readonly Counts[],
): PickedKind[] {
  return kinds.map(({ id, length, count }, k) => ({
    id,
    count: count - runs.reduce((sum, counts) => sum + counts[k]!, 0),
    length_m: length,
  }));
}
