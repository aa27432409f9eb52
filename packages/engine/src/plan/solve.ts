import { normalQuantile } from '../numeric/index.ts';
import { type Chances, chancesOf, type DepthDemand, shortfall } from './chance.ts';
import type { Forecast } from './forecast.ts';
import { runKept } from './kept-runs.ts';
import { courseOf, type TableTask } from './make-tables.ts';
import { type RowsRead, type RunDemand, type RunOutcomes, rowsFor, runPlan, type Setup } from './run-plan.ts';
import type { ShopDraws } from './shop-draws.ts';
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
/** Part of the spread within which a target is solved [-]. */
const TOLERANCE = 0.04;

/**
 * Aims a way at the least depth that reaches as surely as wanted: less depth takes less time, filler and risk.
 * How sure it is rises with the depth aimed at nearly as a normal distribution does, so that a straight line through
 * two tries, in its quantiles, leads to the third. Where the other chances are short by more than is hopeless while this
 * one is hardly met, no target will do, and the try is handed back as it is.
 */
export function solve(task: SolveTask, first: Forecast, draws: ShopDraws, hopeless?: number): Solved {
  const { assurance } = task.demand;
  const quantile = (solved: Solved): number => {
    const edge = 0.5 / draws.count;
    return normalQuantile(Math.min(1 - edge, Math.max(edge, solved.chances.reached)));
  };
  const wanted = normalQuantile(assurance);
  let at = first.logTarget;
  let best: Solved | undefined;
  let below: { at: number; z: number } | undefined;
  let above: { at: number; z: number } | undefined;
  for (let run = 0; run < RUNS_MOST; run += 1) {
    const solved = triedAt(task, at, draws);
    const z = quantile(solved);
    if (solved.chances.reached >= assurance) {
      if (above === undefined || at < above.at) above = { at, z };
      if (best === undefined || best.chances.reached < assurance || at < best.logTarget) best = solved;
    } else {
      if (below === undefined || at > below.at) below = { at, z };
      if (best === undefined) best = solved;
    }
    const shortElsewhere = Math.max(
      task.demand.assurance - Math.min(solved.chances.notTooDeep, solved.chances.widthInBand),
      task.demand.ligamentAssurance - solved.chances.ligamentKept,
    );
    if (
      hopeless !== undefined &&
      shortElsewhere > 2 * hopeless &&
      solved.chances.reached < assurance + hopeless / 2
    )
      return solved;
    const slope = 1 / first.spread;
    if (above !== undefined && below !== undefined) {
      if (above.at - below.at < TOLERANCE * first.spread) break;
      const share = (wanted - below.z) / Math.max(1e-9, above.z - below.z);
      // A little above where the line meets what is wanted, so that the next try bounds it from above.
      const aim = below.at + Math.min(0.9, Math.max(0.1, share)) * (above.at - below.at);
      at = Math.min(aim + 0.25 * TOLERANCE * first.spread, (aim + above.at) / 2);
    } else if (above !== undefined) {
      at =
        above.at -
        Math.min(2 * first.spread, Math.max(TOLERANCE * first.spread * 0.9, (above.z - wanted) / slope));
    } else {
      const last = below!;
      at =
        last.at +
        Math.min(2 * first.spread, Math.max(TOLERANCE * first.spread * 0.9, (wanted - last.z) / slope));
    }
  }
  return best!;
}
