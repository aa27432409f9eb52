import { bisect, percentiles, type RegressionBelief } from '../numeric/index.ts';
import { type Chances, chancesOf, type DepthDemand, reachesDepth, shortfall } from './chance.ts';
import { gaugeTable, type TableAim, type TableQuestion } from './gauge-table.ts';
import type { Pattern } from './pattern.ts';
import { type RunDemand, type RunOutcomes, runPlan } from './run-plan.ts';
import type { LayerRule, Setup } from './setup.ts';
import type { ShopDraws } from './shop-draws.ts';
import type { Work } from './work.ts';

/** Everything the solvers need besides the number of layers. */
export interface SolveTask {
  /** The set-up without its layers. */
  readonly base: Omit<Setup, 'layers'>;
  readonly pattern: Pattern;
  readonly belief: RegressionBelief;
  /** Least and greatest ln specific energy that the travel allows [-]. */
  readonly energyRange: readonly [number, number];
  readonly depth: DepthDemand;
  readonly run: RunDemand;
  /** How much a track's centre line must lie below the least depth for the ridges to reach it [m]. */
  readonly ridge: number;
  /** What running set-ups takes from. */
  readonly work: Work;
}

/** A set-up that was run in the shops, and how it did. */
export interface Solved {
  readonly setup: Setup;
  readonly outcomes: RunOutcomes;
  readonly chances: Chances;
  /** Largest shortfall of a chance; 0 or less: all demands met [-]. */
  readonly shortfall: number;
  /** Row of the table that each reading fell into, one list per pass, where they were written down. */
  readonly rows?: readonly Int16Array[];
}

/** Tolerance of a solved ln specific energy [-]: about a quarter of a per cent in travel. */
const ENERGY_TOLERANCE = 2.5e-3;
/** Shares of the middle depth that the blind layers before the first stop may aim at, by the number of stops [-]. */
const FIRST_SHARES: Readonly<Record<number, readonly number[]>> = { 1: [0.75, 0.65], 2: [0.6, 0.45] };
/** Share of what is missing that a layer takes off when another gauge stop follows [-]. */
const PART_SHARE = 0.6;
/** Corrections of the per-reading chance until the whole plan keeps its chance [-]. */
const CORRECTIONS = 3;
/** Part of the allowed misses that a quick plan should use up [-]. */
const SPENT = 0.7;
/** Readings are expected between these percentiles; the outer rows of a table are open [-]. */
const EXPECTED = [0.03, 0.99] as const;

/** Runs given layers in the shops. */
export function tried(
  task: SolveTask,
  layers: readonly LayerRule[],
  draws: ShopDraws,
  rows?: readonly Int16Array[],
): Solved {
  const setup: Setup = { ...task.base, pattern: task.pattern, layers };
  task.work.left -= task.pattern.tracks * layers.length * draws.count;
  const outcomes = runPlan(setup, task.run, draws, rows);
  const chances = chancesOf(outcomes, task.depth);
  return { setup, outcomes, chances, shortfall: shortfall(chances, task.depth), ...(rows && { rows }) };
}

/** In place of a row where a track was finished before [-]. */
export const NOT_READ = -1;

/** Runs given layers in the shops and writes down the row of every reading. */
export function triedWithRows(task: SolveTask, layers: readonly LayerRule[], draws: ShopDraws): Solved {
  if (layers.every((rule) => rule.kind === 'set')) return tried(task, layers, draws);
  const passes = task.pattern.tracks * layers.length;
  const rows = Array.from({ length: passes }, () => new Int16Array(draws.count).fill(NOT_READ));
  return tried(task, layers, draws, rows);
}

/**
 * The quickest blind plan with this many layers, all at one travel: depth falls monotonically with travel, so
 * the greatest travel that still reaches the depth is found by halving. If no travel reaches it, the slowest is
 * returned with its shortfall.
 */
export function solveBlind(task: SolveTask, layers: number, draws: ShopDraws): Solved {
  const [low, high] = task.energyRange;
  const at = (logEnergy: number): Solved =>
    tried(
      task,
      Array.from({ length: layers }, () => ({ kind: 'set', logEnergy })),
      draws,
    );
  const quickest = at(low);
  if (reachesDepth(quickest.chances, task.depth) || high <= low) return quickest;
  const missing = (logEnergy: number): number => (reachesDepth(at(logEnergy).chances, task.depth) ? 1 : -1);
  const root = bisect(missing, low, high, ENERGY_TOLERANCE);
  // The end of the last interval that does reach the depth.
  return root === undefined ? at(high) : at(Math.min(high, root + ENERGY_TOLERANCE));
}

/**
 * A gauge-and-adjust plan with this many layers and stops, its blind layers aiming at a share of the middle depth.
 * The quickest tables are tried first; where they leave too little room above, those that meet both sides best.
 */
export function solveGauged(
  task: SolveTask,
  layers: number,
  stops: number,
  stations: number,
  share: number,
  draws: ShopDraws,
): Solved | undefined {
  const start = startOf(task, layers - stops, share, stations, draws);
  if (start === undefined) return undefined;
  const quick = quickPolicy(task, start, stops, stations, draws);
  if (quick.shortfall <= 0) return quick;
  const centred = withTables(task, start, stops, stations, { kind: 'centred' }, draws);
  return quick.shortfall < centred.shortfall ? quick : centred;
}

/** What scouting found: the share of the depth that the blind layers should aim at, and how it did. */
export interface Scouted {
  readonly share: number;
  readonly solved: Solved;
}

/** Finds with few shops which shares of the depth the blind layers before the first stop may aim at, best first. */
export function scoutGauged(
  task: SolveTask,
  layers: number,
  stops: number,
  stations: number,
  draws: ShopDraws,
): Scouted[] {
  const scouted: Scouted[] = [];
  for (const share of FIRST_SHARES[stops]!) {
    const start = startOf(task, layers - stops, share, stations, draws);
    if (start === undefined) continue;
    scouted.push({ share, solved: withTables(task, start, stops, stations, { kind: 'centred' }, draws) });
  }
  return scouted.sort((a, b) => a.solved.shortfall - b.solved.shortfall);
}

/** The blind layers before the first stop, and what the first table is worked out from. */
interface Start {
  readonly layers: readonly LayerRule[];
  readonly stage: Stage;
}

/** What a table is worked out from: the question, and the readings to expect. */
interface Stage {
  readonly question: TableQuestion;
  readonly expected: { readonly low: number; readonly high: number };
}

function startOf(
  task: SolveTask,
  count: number,
  share: number,
  stations: number,
  draws: ShopDraws,
): Start | undefined {
  const layers = firstLayers(task, count, share);
  return layers && { layers, stage: stageAfter(task, layers, stations, draws) };
}

function stageAfter(
  task: SolveTask,
  layers: readonly LayerRule[],
  stations: number,
  draws: ShopDraws,
): Stage {
  const soFar = tried(task, layers, draws).outcomes;
  const [low, high] = percentiles(soFar.deepest, EXPECTED) as [number, number];
  const lowest = task.pattern.tracks === 1 ? low : percentiles(soFar.shallowest, EXPECTED)[0]!;
  return { question: tableQuestion(task, layers, stations), expected: { low: Math.min(low, lowest), high } };
}

/**
 * Moves the chance asked of each reading up or down until the plan as a whole reaches the depth as surely as
 * wanted and hardly more: what is asked too much above is missing at the other side.
 */
function quickPolicy(
  task: SolveTask,
  start: Start,
  stops: number,
  stations: number,
  draws: ShopDraws,
): Solved {
  const allowed = 1 - task.depth.assurance;
  let missing = allowed / task.pattern.tracks;
  let best: Solved | undefined;
  for (let step = 0; step <= CORRECTIONS; step += 1) {
    const aim: TableAim = { kind: 'quick', chance: 1 - missing };
    const solved = withTables(task, start, stops, stations, aim, draws);
    if (best === undefined || solved.shortfall < best.shortfall) best = solved;
    const missed = 1 - solved.chances.reached;
    if (missed <= allowed && missed > SPENT * allowed) break;
    missing = Math.min(
      0.4,
      missing * Math.min(4, Math.max(0.2, ((1 + SPENT) * allowed) / (2 * Math.max(missed, allowed / 8)))),
    );
  }
  return best!;
}

/** The blind layers before the first stop, aiming at a share of the middle depth; undefined if travel cannot. */
function firstLayers(task: SolveTask, count: number, share: number): LayerRule[] | undefined {
  const { depth, belief, base } = task;
  const middle = Math.sqrt((depth.least + task.ridge) * depth.most);
  const [level, slope, angle] = belief.mean as [number, number, number];
  const cut = (share * middle) / count;
  const wanted = (Math.log(cut / base.electrode.diameter) - level - angle * base.angleTerm) / slope;
  const [low, high] = task.energyRange;
  if (wanted > high) return undefined;
  return Array.from({ length: count }, () => ({ kind: 'set', logEnergy: Math.max(low, wanted) }));
}

/** Adds the layers after the stops, each with a table made for the readings to expect there. */
function withTables(
  task: SolveTask,
  start: Start,
  stops: number,
  stations: number,
  aim: TableAim,
  draws: ShopDraws,
): Solved {
  const layers: LayerRule[] = [...start.layers];
  for (let stop = 0; stop < stops; stop += 1) {
    const { question, expected } = stop === 0 ? start.stage : stageAfter(task, layers, stations, draws);
    const chance = aim.kind === 'quick' ? aim.chance : task.depth.assurance;
    const stageAim: TableAim = stop === stops - 1 ? aim : { kind: 'part', share: PART_SHARE, chance };
    layers.push({ kind: 'table', stations, table: gaugeTable(question, expected, stageAim) });
  }
  return tried(task, layers, draws);
}

/** The question that the table after these layers answers. */
export function tableQuestion(
  task: SolveTask,
  layers: readonly LayerRule[],
  stations: number,
): TableQuestion {
  const energies = layers.map((rule) =>
    rule.kind === 'set'
      ? rule.logEnergy
      : middleOf(rule.table.logEnergy.filter((value) => !Number.isNaN(value))),
  );
  const known = energies.filter((value) => !Number.isNaN(value));
  return {
    belief: task.belief,
    diameter: task.base.electrode.diameter,
    angleTerm: task.base.angleTerm,
    energyRange: task.energyRange,
    before: { logEnergy: known.reduce((sum, value) => sum + value, 0) / known.length, layers: known.length },
    required: task.depth.least + task.ridge,
    most: Math.min(task.depth.most, task.depth.mostForLigament),
    readingSd: task.run.readingSd / Math.sqrt(stations),
  };
}

function middleOf(values: readonly number[]): number {
  return values.length === 0 ? Number.NaN : values[Math.floor(values.length / 2)]!;
}
