import { passArea } from '../groove/index.ts';
import { normalQuantile } from '../numeric/index.ts';
import { commonCovariance, middleDepth } from './law.ts';
import { askFor, EXPECTED, geometricEdges, type ReadingRow, type ReadingTable } from './reading-table.ts';
import { extremesWith } from './seam-paths.ts';
import { LATER_PASS_SD } from './shop-draws.ts';
import { stopTable } from './stop-table.ts';
import { energyForCut, heldEnergy, readingVariance, rowAssurance, type TableTask } from './table-task.ts';
import { courseWeight, RUN_IN_SHARE, type Way } from './way.ts';

/** How a plan is run: one setting per layer, or a table that gives it. */
export interface Course {
  /** ln specific energy of the trial or the run-in [-]; NaN without one. */
  readonly tryoutEnergy: number;
  /** The table after it, with one setting per layer; after a run-in one for the rest and one to deepen the run-in. */
  readonly tryoutTable: ReadingTable | undefined;
  /** ln specific energy of every layer at the middle of what is expected [-]. */
  readonly middle: readonly number[];
  /** The table before each layer that waits for a stop. */
  readonly stopTables: readonly (ReadingTable | undefined)[];
  /** Depth below the plate that each layer should reach [m]. */
  readonly targets: readonly number[];
}

/** Share of the arc's power that a row of a table may ask for to melt the cut out: the rest of what may go into it heats its face [-] (judgement). */
const ROW_REMOVAL_MOST = 0.75;

/** Least ln specific energy that melts a cut of this depth out at the share of the arc's power that a row may ask for. */
function energyToMelt({ rig, passWidth }: Pick<TableTask, 'rig' | 'passWidth'>, cut: number): number {
  const area = passArea({ width: passWidth, depth: cut });
  return Math.log(area / (ROW_REMOVAL_MOST * rig.electrode.diameter ** 2));
}

/** Makes every setting and table of a way that aims at a depth of the tracks' centre lines. */
export function courseOf(task: TableTask, target: number): Course {
  const { law, rig, way } = task;
  const { tryout } = way;
  let sum = 0;
  const targets = way.shares.map((share) => {
    sum += share;
    return target * sum;
  });
  const cuts = way.shares.map((share) => share * target);
  const middle = cuts.map((cut) => heldEnergy(rig, energyForCut(law, rig, cut)));
  const tryoutCut =
    tryout === undefined ? 0 : (tryout.kind === 'run_in' ? RUN_IN_SHARE : Math.max(...way.shares)) * target;
  const tryoutEnergy = tryout === undefined ? Number.NaN : heldEnergy(rig, energyForCut(law, rig, tryoutCut));
  return {
    tryoutEnergy,
    tryoutTable: tryout && tryoutTable(task, tryoutEnergy, target, cuts),
    middle,
    stopTables: way.shares.map((_, layer) =>
      layer < way.shares.length - way.stops ? undefined : stopTable(task, layer, targets, middle),
    ),
    targets,
  };
}

/** The table after a trial or a run-in: what the reading says of this shop sets every later pass. */
function tryoutTable(task: TableTask, energy: number, target: number, cuts: readonly number[]): ReadingTable {
  const { law, rig, way } = task;
  const tryout = way.tryout!;
  const { diameter } = rig.electrode;
  const middle = middleDepth(law, energy, rig.angleTerm);
  const common = commonCovariance(law, energy, energy, rig.angleTerm);
  const variance = readingVariance(task, tryout, diameter * Math.exp(middle));
  const spread = Math.sqrt(common + variance);
  const low = diameter * Math.exp(middle - EXPECTED * spread);
  const high = diameter * Math.exp(middle + EXPECTED * spread);
  const runIn = tryout.kind === 'run_in';
  const edges = geometricEdges(low, runIn ? Math.min(high, task.most) : high);
  const [level, slope, angle] = law.mean;
  const still = commonCovariance(law, energy, 0, rig.angleTerm);
  const perEnergy = commonCovariance(law, energy, 1, rig.angleTerm) - still;
  /** Energy whose cut, after this reading, is this deep in the middle. */
  const energyAfter = (reading: number, cut: number): number => {
    const pull = (Math.log(reading / diameter) - middle) / (common + variance);
    return (
      (Math.log(cut / diameter) - level - angle * rig.angleTerm - still * pull) / (slope + perEnergy * pull)
    );
  };
  /** What a pass at this energy cuts in the middle after this reading. */
  const cutAt = (reading: number, at: number): number => {
    const pull = (Math.log(reading / diameter) - middle) / (common + variance);
    return (
      diameter * Math.exp(level + angle * rig.angleTerm + still * pull + (slope + perEnergy * pull) * at)
    );
  };
  const reach = rowReach(task, way, target, (common * variance) / (common + variance));
  /** Whether a groove that comes out so many times as deep as was aimed at, since the travel ends, still holds. */
  const holds = (times: number): boolean => {
    const off = Math.log(times);
    // As aimed at, a row is as good as the plan: that was solved for it.
    return Math.abs(off) < AS_AIMED || (off < 0 ? -off <= reach.shallower : off <= reach.deeper);
  };
  /** Whether the rest of the seam holds, and the run-in deepened at its travel does not become too deep. */
  const deepens = (reading: number, [rest, deepening]: readonly number[]): boolean =>
    holds(cutAt(reading, rest!) / target) &&
    reading + cutAt(reading, deepening!) < task.most * (1 - OUT_OF_REACH / 2);
  /** Whether the groove holds; before a stop only that it is not too deep already: what is missing the stop mends. */
  const staysInside = (reading: number, held: readonly number[]): boolean => {
    const cut = held.slice(0, held.length - way.stops).reduce((sum, each) => sum + cutAt(reading, each), 0);
    return way.stops > 0 ? Math.log(cut / target) <= reach.deeper : holds(cut / target);
  };
  const rows = edges.slice(0, -1).map((edge, index): ReadingRow => {
    const reading = Math.sqrt(edge * edges[index + 1]!);
    const wantedCuts = runIn ? [target, Math.max(target - reading, 0.02 * target)] : cuts;
    const wanted = wantedCuts.map((cut) => energyAfter(reading, cut));
    const within = wanted.map((each) => heldEnergy(rig, each));
    // No reading lets a pass travel more quickly than its arc can melt what is to be cut.
    const held = within.map((each, layer) =>
      Math.min(rig.energyRange[1], Math.max(each, energyToMelt(task, wantedCuts[layer]!))),
    );
    const isRun = runIn ? deepens(reading, held) : staysInside(reading, held);
    return isRun ? { action: 'run', logEnergy: held, cuts: wantedCuts } : askFor('out_of_reach');
  });
  return { edges, rows: [askFor('unexpected'), ...rows, askFor('unexpected')] };
}

/** Part of the greatest depth that a run-in deepened at the quickest must stay off it, twice over [-]. */
export const OUT_OF_REACH = 0.1;

/** Part of the spread of one track that the floor of several has [-]. */
const TRACKS_SHARE = 0.6;

/** Depth off the one aimed at, in ln, that is none: rounding [-]. */
const AS_AIMED = 1e-6;

/**
 * How much shallower and deeper than aimed at, in ln, a groove may come out because the travel ends, for a row to hold as surely
 * as a row must; `common` is the variance of ln depth that is left in common.
 */
export function rowReach(
  { law, rig, passLength, most, assurance, paths }: Omit<TableTask, 'way'>,
  { tryout, shares }: Way,
  target: number,
  common: number,
): { readonly shallower: number; readonly deeper: number } {
  const { tracks } = rig.pattern;
  const { pass, seam } = law.levels;
  const course = tryout!.kind === 'run_in' ? 1 : courseWeight(shares);
  const extremes = extremesWith(paths(passLength), 1);
  const own = Math.hypot(pass * course, (1 - shares[0]!) * LATER_PASS_SD, seam * course * extremes.sd);
  const spread = Math.hypot(Math.sqrt(common), tracks > 1 ? TRACKS_SHARE * own : own);
  // The deepest of several tracks lies above the mean of them.
  const deepest =
    seam * course * extremes.mean + (tracks > 1 ? normalQuantile(1 - 1 / (tracks + 1.5)) * own : 0);
  const [z, least] = [normalQuantile(assurance), normalQuantile(rowAssurance(assurance))];
  return {
    shallower: (z - least) * spread,
    deeper: Math.max(0, Math.log(most / target) - deepest - least * spread),
  };
}
