import type { Job } from '../job/index.ts';
import { energiesOf } from './candidate-of.ts';
import { shortfall } from './chance.ts';
import { depthDemand } from './demand.ts';
import { crewRate, type Effort, effortOf, type Merit } from './effort.ts';
import { type MissNote, missChance } from './miss.ts';
import type { Pattern } from './pattern.ts';
import type { LayerRule } from './setup.ts';
import type { ShopDraws } from './shop-draws.ts';
import {
  type Solved,
  type SolveTask,
  scoutGauged,
  solveBlind,
  solveGauged,
  tried,
  triedWithRows,
} from './solve.ts';
import { type ElectrodeSearch, type Feasible, stockMiss, weigh } from './weigh.ts';
import { grooveLeft } from './whole-cost.ts';

/** Gauge stops of one plan at most [-]. */
const STOPS_MOST = 2;

/** Parts of the allowed misses that are kept back when solving, one after the other [-]. */
const GUARDS = [0.1, 0.25, 0.5] as const;

/** Shortfall in the few scout shops beyond which a set-up is given up [-]: two to three of its standard errors. */
const HOPELESS = 0.06;

/** A stock too small for half of the scout shops is too small for nine tenths of all [-]. */
const HALF = 0.5;

/** Searches layers and gauge stops for one pattern of tracks: the leanest blind plan, and the leanest that gauges. */
export function searchPattern(
  input: ElectrodeSearch,
  task: SolveTask,
  width: number,
  bestSoFar: number,
  miss: MissNote,
): { readonly found: readonly Feasible[]; readonly lowerMayHelp: boolean } {
  const { job, draws, scouts } = input;
  const { objective } = job.plan;
  const stations = job.kit.gauge.stations_most;
  const layersLeast = job.locks.layers ?? 1;
  const layersMost = job.locks.layers ?? job.plan.layers_most;
  const found: Feasible[] = [];
  let lowerMayHelp = false;
  let best = bestSoFar;
  const alone = scoutTask(task);
  if (alone.depth.least >= alone.depth.most) {
    miss({
      constraint: 'ridge_height',
      title: 'Depth of the tracks, for the ridges to be deep enough',
      demand: alone.depth.least * 1000,
      limit: alone.depth.most * 1000,
      unit: 'mm',
      remedy: 'a wider tolerance, a narrower floor, or a larger electrode',
      size: alone.depth.least / alone.depth.most - 1,
    });
    return { found, lowerMayHelp };
  }
  const begunBy = (scout: Solved): Effort =>
    effortOf(scout.setup, scout.outcomes, scouts, job, task.run.passLength);
  // The median groove that just reaches: a plan that reaches it surely leaves no less to fill.
  const leastAfter =
    input.afterCost?.(grooveLeft(width, depthDemand(job, 0).least, task.pattern, job.seam.length)).cost ?? 0;
  const worthTrying = (passes: number): boolean => {
    const least = leastMerit(task, passes, job, leastAfter);
    const beaten = input.rivals.some(
      (rival) => rival.time <= least.time && rival.cost <= least.cost && rival.heat <= least.heat,
    );
    return input.work.left > 0 && least[objective] < best && !beaten;
  };
  /**
   * Solves, and keeps what also holds in the shops that had no part in solving. The wanted chances are raised a
   * little before solving, and a little more if the fair count falls short.
   */
  const settle = (
    alone: Solved,
    solve: (raised: SolveTask, shops: ShopDraws) => Solved | undefined,
  ): boolean => {
    // One track alone is the cheapest look, all tracks in a few shops the next.
    const tooLittle = stockMiss(task, begunBy(alone), HALF, task.pattern.tracks);
    if (tooLittle !== undefined) {
      miss(tooLittle);
      return false;
    }
    const scout = hopeless(alone, task) || task.pattern.tracks === 1 ? alone : solve(task, scouts);
    if (scout === undefined) return false;
    if (hopeless(alone, task) || (scout !== alone && scout.shortfall > HOPELESS)) {
      lowerMayHelp ||= atGreatestTravel(scout);
      return missChance(scout, task, miss);
    }
    const short = stockMiss(task, begunBy(scout), HALF);
    if (short !== undefined) {
      miss(short);
      return false;
    }
    for (const guard of GUARDS) {
      const raised = { ...task, depth: depthDemand(job, guard) };
      const solved = solve(raised, draws);
      if (solved === undefined) return false;
      lowerMayHelp ||= atGreatestTravel(solved);
      // What is kept back need not be met on both sides, as long as what is wanted is.
      if (shortfall(solved.chances, task.depth) > 0) return missChance(solved, task, miss);
      const lean = fewestStations(raised, solved, draws);
      const fair = triedWithRows(task, lean.setup.layers, input.fair);
      if (fair.shortfall > 0) {
        missChance(fair, task, miss);
        continue;
      }
      const feasible = weigh(input, task, fair, width, miss);
      lowerMayHelp ||= feasible === undefined;
      if (feasible === undefined) return false;
      found.push(feasible);
      best = Math.min(best, feasible.merit[objective]);
      return true;
    }
    return false;
  };
  let blindLayers = Number.POSITIVE_INFINITY;
  for (let layers = layersLeast; layers <= layersMost && worthTrying(layers); layers += 1) {
    if (settle(solveBlind(alone, layers, scouts), (raised, shops) => solveBlind(raised, layers, shops))) {
      blindLayers = layers;
      break;
    }
  }
  if (job.plan.gauge_stops === 'never' || job.locks.travel !== undefined) return { found, lowerMayHelp };
  // A stop costs time, so it pays only where it saves layers or makes a plan possible at all.
  for (let layers = Math.max(2, layersLeast); layers <= layersMost && layers < blindLayers; layers += 1) {
    for (let stops = 1; stops <= Math.min(STOPS_MOST, layers - 1); stops += 1) {
      if (!worthTrying(layers - stops)) continue;
      for (const { share, solved } of scoutGauged(alone, layers, stops, stations, scouts)) {
        const solve = (raised: SolveTask, shops: ShopDraws): Solved | undefined =>
          solveGauged(raised, layers, stops, stations, share, shops);
        if (settle(solved, solve)) return { found, lowerMayHelp };
      }
    }
  }
  return { found, lowerMayHelp };

  function atGreatestTravel(solved: Solved): boolean {
    return energiesOf(solved).at(-1)! <= task.energyRange[0];
  }
}

/** Whether one track alone misses what is wanted by more than the few shops can be wrong: more tracks miss it too. */
function hopeless(scout: Solved, task: SolveTask): boolean {
  return shortfall(scout.chances, task.depth) > HOPELESS;
}

/** One track alone, asked to lie as deep as the ridges need: what fails there fails with more tracks all the more. */
function scoutTask(task: SolveTask): SolveTask {
  const single: Pattern = { tracks: 1, spacing: 0 };
  return {
    ...task,
    base: { ...task.base, pattern: single },
    pattern: single,
    depth: { ...task.depth, least: task.depth.least + task.ridge },
    run: { ...task.run, zoneWidth: 0 },
    ridge: 0,
  };
}

/**
 * Least that so many passes per track can take: those that are run in any case, at an energy whose median cuts
 * add up to the least depth. A plan that reaches it surely takes more.
 */
function leastMerit(task: SolveTask, passesPerTrack: number, job: Job, afterCost: number): Merit {
  const { base, pattern, belief, run, depth } = task;
  const [level, slope, angle] = belief.mean as [number, number, number];
  const wanted =
    (Math.log(depth.least / (passesPerTrack * base.electrode.diameter)) - level - angle * base.angleTerm) /
    slope;
  const energy = Math.max(task.energyRange[0], wanted);
  const passes = pattern.tracks * passesPerTrack;
  const travelTime = (passes * run.passLength * Math.exp(energy)) / base.unitTravel;
  const time =
    travelTime + passes * job.rates.start_time + ((passes - 1) * run.passLength) / job.rates.return_travel;
  return {
    time,
    cost: (time / 3600) * crewRate(job) + afterCost,
    heat: base.voltage * base.current * travelTime,
  };
}

/** The same plan with as few stations as still meet every demand. */
function fewestStations(task: SolveTask, gauged: Solved, draws: ShopDraws): Solved {
  let best = gauged;
  const most = Math.max(...gauged.setup.layers.map((rule) => (rule.kind === 'table' ? rule.stations : 1)));
  for (let stations = most - 1; stations >= 1; stations -= 1) {
    const fewer = tried(task, withStations(gauged.setup.layers, stations), draws);
    if (fewer.shortfall > 0) break;
    best = fewer;
  }
  return best;
}

/** The same layers with another number of stations at each stop. */
export function withStations(layers: readonly LayerRule[], stations: number): LayerRule[] {
  return layers.map((rule) => (rule.kind === 'table' ? { ...rule, stations } : rule));
}
