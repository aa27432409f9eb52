import { normalQuantile, nthLeast } from '../numeric/index.ts';
import { type Chances, chancesOf, type DepthDemand, shortfall } from './chance.ts';
import type { Forecast } from './forecast.ts';
import { runKept } from './kept-runs.ts';
import { courseOf } from './make-tables.ts';
import { type RowsRead, type RunDemand, type RunOutcomes, rowsFor, runPlan, type Setup } from './run-plan.ts';
import type { ShopDraws } from './shop-draws.ts';
import type { TableTask } from './table-task.ts';
import type { Work } from './work.ts';

/** Everything needed to solve one way. */
export interface SolveTask {
  readonly tables: TableTask;
  readonly run: RunDemand;
  readonly demand: DepthDemand;
  readonly work: Work;
}

/** A set-up that was run in the shops, and how it did. */
export interface Solved {
  readonly setup: Setup;
  /** ln of the depth that its settings aim at [m]. */
  readonly logTarget: number;
  readonly outcomes: RunOutcomes;
  readonly chances: Chances;
  /** Largest shortfall of a chance; 0 or less: all demands met [-]. */
  readonly shortfall: number;
  /** Rows that readings fell into, where they were written down. */
  readonly rows?: RowsRead;
}

/** Runs the way, aimed at a depth, in the shops. */
export function triedAt(task: SolveTask, logTarget: number, draws: ShopDraws): Solved {
  return tried(task, logTarget, draws, false);
}

/** Runs a solved way in other shops, with the rows of its tables. */
export function triedAgain(task: SolveTask, { logTarget }: Solved, draws: ShopDraws): Solved {
  return tried(task, logTarget, draws, true);
}

function tried(task: SolveTask, logTarget: number, draws: ShopDraws, withRows: boolean): Solved {
  const { tables, run, demand, work } = task;
  const { rig, way } = tables;
  const passes = rig.pattern.tracks * way.shares.length + (way.tryout === undefined ? 0 : 1);
  // What is kept counts as run: how far the work allowed reaches does not depend on what was planned before.
  work.left -= passes * draws.count;
  const { course, outcomes, rows } = runKept(tables, run, logTarget, draws, withRows, () => {
    const setup: Setup = { rig, way, course: courseOf(tables, Math.exp(logTarget)) };
    const read = withRows ? rowsFor(setup, draws.count) : undefined;
    return { course: setup.course, outcomes: runPlan(setup, run, draws, read), rows: read };
  });
  const chances = chancesOf(outcomes, demand);
  return {
    setup: { rig, way, course },
    logTarget,
    outcomes,
    chances,
    shortfall: shortfall(chances, demand),
    ...(rows && { rows }),
  };
}

/** Runs of one solving at most [-]. */
const RUNS_MOST = 6;
/** Part of the spread by which a target may reach deeper than it must [-]. */
const TOLERANCE = 0.04;

/** A try of a target: how much deeper than wanted, in ln depth, the shop is that decides whether it reaches surely enough. */
interface Try {
  readonly at: number;
  readonly room: number;
}

/**
 * Aims a way at the least depth that reaches as surely as wanted: less depth takes less time, filler and risk.
 *
 * Of all shops one decides: the shallowest that must still reach. Its floor follows the depth aimed at, so that how much it
 * is too deep or too shallow says how far the target is to be moved. Where the other chances are short by more than is
 * hopeless while this one is hardly met, no target will do, and the try is handed back as it is.
 */
export function solve(
  task: SolveTask,
  first: Forecast,
  draws: ShopDraws,
  hopeless?: number,
  tolerance = TOLERANCE,
): Solved {
  const { assurance, least } = task.demand;
  const near = tolerance * first.spread;
  let at = first.logTarget;
  let best: Solved | undefined;
  let below: Try | undefined;
  let above: Try | undefined;
  for (let run = 0; run < RUNS_MOST; run += 1) {
    const solved = triedAt(task, at, draws);
    const { chances } = solved;
    const room = Math.log(decidingDepth(solved.outcomes.shallowest, assurance) / least);
    if (chances.reached >= assurance) {
      if (best === undefined || best.chances.reached < assurance || at < best.logTarget) best = solved;
      if (room <= near) return best;
      if (above === undefined || at < above.at) above = { at, room };
    } else {
      best ??= solved;
      if (below === undefined || at > below.at) below = { at, room };
    }
    const shortElsewhere = Math.max(
      assurance - Math.min(chances.notTooDeep, chances.widthInBand),
      task.demand.ligamentAssurance - chances.ligamentKept,
    );
    if (hopeless !== undefined && shortElsewhere > 2 * hopeless && chances.reached < assurance + hopeless / 2)
      return solved;
    if (above !== undefined && below !== undefined && above.at - below.at < near) break;
    at = nextTarget({ at, room }, below, above, first.spread, near);
  }
  return best!;
}

/** The depth, at its shallowest, of the shop that decides: as many are shallower as may miss [m]. */
function decidingDepth(shallowest: Float64Array, assurance: number): number {
  const misses = Math.floor((1 - assurance) * shallowest.length + 1e-9);
  return nthLeast(shallowest, Math.min(misses, shallowest.length - 1));
}

/**
 * Room left, in ln depth, until what is deepest is too deep more often than it may be; where a chance is short that depth does
 * not mend, how much it is short in standard deviations, in parts of the spread.
 */
export function roomOf({ outcomes, chances }: Solved, demand: DepthDemand, spread: number): number {
  const { assurance, ligamentAssurance } = demand;
  const { deepest } = outcomes;
  const at = (chance: number): number =>
    nthLeast(deepest, Math.min(deepest.length - 1, Math.ceil(chance * deepest.length - 1e-9) - 1));
  const short = (got: number): number =>
    got >= assurance
      ? Number.POSITIVE_INFINITY
      : spread * (normalQuantile(Math.max(1e-6, got)) - normalQuantile(assurance));
  return Math.min(
    Math.log(demand.most / at(assurance)),
    Math.log(demand.mostForLigament / at(ligamentAssurance)),
    short(chances.reached),
    short(chances.widthInBand),
  );
}

/** Where to try next: from the last try as far as the deciding shop is off, and between what is known to be too little and enough. */
function nextTarget(
  last: Try,
  below: Try | undefined,
  above: Try | undefined,
  spread: number,
  near: number,
): number {
  if (below !== undefined && above !== undefined) {
    const rise = (above.room - below.room) / (above.at - below.at);
    const aim = below.at - below.room / rise + 0.3 * near;
    const inside = Number.isFinite(aim) && aim > below.at && aim < above.at;
    return inside ? aim : (below.at + above.at) / 2;
  }
  // Where nothing was cut in the shop that decides, nothing says how far: a step of the spread.
  if (!Number.isFinite(last.room)) return last.at + spread;
  const step = -last.room + 0.3 * near;
  return last.at + Math.max(-2 * spread, Math.min(2 * spread, step));
}
