import { arcHeight, heightAt, passWidth, runOutLength } from '../groove/index.ts';
import type { Job, KitElectrode } from '../job/index.ts';
import type { Candidate, Limit, LimitFunction } from '../limit/index.ts';
import { currentRangeOf, depthRegressors, predictWidth, type RemovalPosterior } from '../removal/index.ts';
import type { DepthDemand } from './chance.ts';
import { type Effort, effortOf, type Merit, meritOf } from './effort.ts';
import { type Pattern, patternsFor, trackOffset } from './pattern.ts';
import type { LayerRule, RunDemand } from './run-plan.ts';
import type { ShopDraws } from './shop-draws.ts';
import { type Solved, type SolveTask, scoutGauged, solveBlind, solveGauged, tried } from './solve.ts';

/** Currents tried between the ends of the range [-]. */
const CURRENTS = 5;
/** Gauge stops of one plan at most [-]. */
const STOPS_MOST = 2;

/** Shortfall in the few scout shops beyond which a set-up is given up [-]: two to three of its standard errors. */
const HOPELESS = 0.06;

/** How much the wanted chances are raised before solving, one after the other [-]. */
const GUARDS = [0.005, 0.02] as const;

/** A set-up that meets every demand and every hard limit, with what it takes. */
export interface Feasible {
  readonly task: SolveTask;
  readonly solved: Solved;
  readonly candidate: Candidate;
  readonly effort: Effort;
  readonly merit: Merit;
}

/** The closest miss of one constraint over all that was tried. */
export interface Miss {
  readonly constraint: string;
  readonly title: string;
  /** What was asked, in `unit`. */
  readonly demand: number;
  /** What there is, in `unit`. */
  readonly limit: number;
  readonly unit: string;
  readonly remedy: string;
  /** Relative size of the miss [-]. */
  readonly size: number;
}

/** Everything found: what works, and where the rest failed. */
export interface SearchResult {
  readonly feasible: readonly Feasible[];
  readonly misses: readonly Miss[];
}

/** What the search works with. */
export interface SearchInput {
  readonly job: Job;
  readonly posterior: RemovalPosterior;
  readonly limits: readonly LimitFunction[];
  readonly draws: ShopDraws;
  /** A few shops in which hopeless set-ups are seen to be so. */
  readonly scouts: ShopDraws;
  /** Shops that have no part in solving: a set-up must keep its chances there too. */
  readonly fair: ShopDraws;
  /** Stop at the first plan that works: enough to know whether there is one. */
  readonly firstOnly: boolean;
}

/** Searches electrodes, currents, tracks and layers for set-ups that meet every demand. */
export function search(input: SearchInput): SearchResult {
  const feasible: Feasible[] = [];
  const misses = new Map<string, Miss>();
  const miss = (next: Miss): void => {
    const known = misses.get(next.constraint);
    if (known === undefined || next.size < known.size) misses.set(next.constraint, next);
  };
  for (const electrode of electrodesOf(input.job)) {
    if (input.firstOnly && feasible.length > 0) break;
    feasible.push(...searchElectrode(input, electrode, miss));
  }
  return { feasible, misses: [...misses.values()].sort((a, b) => a.size - b.size) };
}

/** At a lower current the same groove only takes longer, so the greatest current that works is the one. */
function searchElectrode(
  input: SearchInput,
  electrode: KitElectrode,
  miss: (next: Miss) => void,
): readonly Feasible[] {
  const [greatest, ...lower] = currentsOf(electrode, input.job, miss);
  if (greatest === undefined) return [];
  const first = searchCurrent(input, electrode, greatest, miss);
  if (first.found.length > 0 || !first.lowerMayHelp) return first.found;
  // The least current allows the shallowest cuts and asks least of the kit: where it fails, all between fail.
  const least = lower.pop();
  const last = least === undefined ? [] : searchCurrent(input, electrode, least, miss).found;
  if (last.length === 0) return [];
  for (const current of lower) {
    const { found } = searchCurrent(input, electrode, current, miss);
    if (found.length > 0) return found;
  }
  return last;
}

function electrodesOf(job: Job): readonly KitElectrode[] {
  const locked = job.locks.electrode_diameter;
  const stocked = job.kit.electrodes.filter((electrode) => electrode.count > 0);
  return locked === undefined
    ? stocked
    : stocked.filter((electrode) => Math.abs(electrode.diameter - locked) < 1e-4);
}

/** Currents that electrode and source both allow, greatest first. */
function currentsOf(electrode: KitElectrode, job: Job, miss: (next: Miss) => void): number[] {
  const range = currentRangeOf(electrode);
  const millimetres = `${(electrode.diameter * 1000).toFixed(1)} mm`;
  if (range === undefined) {
    miss({
      constraint: 'electrode_current',
      title: 'Current of the electrode',
      demand: electrode.diameter * 1000,
      limit: 0,
      unit: 'mm',
      remedy: `state current_least and current_most for the ${millimetres} electrode: no published range covers its size`,
      size: 10,
    });
    return [];
  }
  const least = Math.max(range.least, job.kit.current.least);
  const most = Math.min(range.most, job.kit.current.most);
  const locked = job.locks.current;
  if (locked !== undefined) {
    if (locked >= least && locked <= most) return [locked];
    const limit = locked > most ? most : least;
    miss({
      constraint: 'locks.current',
      title: 'Locked current',
      demand: locked,
      limit,
      unit: 'A',
      remedy: `unlock the current, or lock it between ${least} A and ${most} A`,
      size: Math.abs(locked / limit - 1),
    });
    return [];
  }
  if (least > most) {
    const tooWeak = range.least > job.kit.current.most;
    const [demand, limit] = tooWeak
      ? [range.least, job.kit.current.most]
      : [range.most, job.kit.current.least];
    miss({
      constraint: tooWeak ? 'source_current_most' : 'source_current_least',
      title: 'Current of the source',
      demand,
      limit,
      unit: 'A',
      remedy: `${tooWeak ? 'a second source, or ' : ''}an electrode of another size than ${millimetres}`,
      size: Math.abs(demand / limit - 1),
    });
    return [];
  }
  if (most === least) return [most];
  return Array.from({ length: CURRENTS }, (_, step) => most - ((most - least) * step) / (CURRENTS - 1));
}

function searchCurrent(
  input: SearchInput,
  electrode: KitElectrode,
  current: number,
  miss: (next: Miss) => void,
): { readonly found: readonly Feasible[]; readonly lowerMayHelp: boolean } {
  const { job, posterior } = input;
  const demand = depthDemand(job, 0);
  const width = predictWidth(posterior, electrode.diameter).p50;
  const radius = width / 2;
  if (radius < job.groove.root_radius_least) {
    miss({
      constraint: 'root_radius',
      title: 'Root radius',
      demand: job.groove.root_radius_least * 1000,
      limit: radius * 1000,
      unit: 'mm',
      remedy: 'a larger electrode',
      size: job.groove.root_radius_least / radius - 1,
    });
    return { found: [], lowerMayHelp: false };
  }
  const middle = (demand.least + demand.most) / 2;
  const surfaceWidth = passWidth({ width, depth: middle });
  const patterns = patternsFor({
    passWidth: width,
    surfaceWidth,
    widthLeast: job.groove.width.least,
    widthMost: job.groove.width.most,
    tracksMost: job.plan.tracks_most,
    tracksLocked: job.locks.tracks,
    spacingLocked: job.locks.track_spacing,
  });
  if (patterns.length === 0) {
    const tooWide = surfaceWidth > job.groove.width.most;
    const limit = tooWide ? job.groove.width.most : job.groove.width.least;
    miss({
      constraint: tooWide ? 'width_most' : 'width_least',
      title: 'Width at the surface',
      demand: surfaceWidth * 1000,
      limit: limit * 1000,
      unit: 'mm',
      remedy: tooWide
        ? 'a smaller electrode, or a wider groove'
        : 'a larger electrode, more tracks, or a narrower groove',
      size: Math.abs(surfaceWidth / limit - 1),
    });
    return { found: [], lowerMayHelp: false };
  }
  const base = baseOf(input, electrode, current);
  const found: Feasible[] = [];
  let lowerMayHelp = false;
  let best = Number.POSITIVE_INFINITY;
  for (const pattern of patterns) {
    if (input.firstOnly && found.length > 0) break;
    const task = taskOf(input, base, pattern, radius, demand);
    const tried = searchPattern(input, task, width, best, miss);
    lowerMayHelp ||= tried.lowerMayHelp;
    for (const feasible of tried.found) {
      found.push(feasible);
      best = Math.min(best, feasible.merit[job.plan.objective]);
    }
  }
  return { found, lowerMayHelp };
}

/** What the groove asks of depth, with the guard added to the wanted chances. */
export function depthDemand(job: Job, guard: number): DepthDemand {
  const { groove, plate } = job;
  const raised = (chance: number): number => Math.min(chance + guard, (1 + chance) / 2);
  return {
    least: groove.depth.wanted - groove.depth.minus,
    most: groove.depth.wanted + groove.depth.plus,
    mostForLigament: plate.thickness - groove.ligament_least,
    width: groove.width,
    assurance: raised(groove.assurance),
    ligamentAssurance: raised(groove.ligament_assurance),
  };
}

/** What every run of the job has in common. */
export function runDemand(job: Job): RunDemand {
  return {
    zoneWidth: job.groove.floor_width,
    passLength: job.seam.length + 2 * runOutLength(job.groove),
    readingSd: job.kit.gauge.reading_sd,
  };
}

function baseOf(
  input: SearchInput,
  electrode: KitElectrode,
  current: number,
): Omit<SolveTask['base'], 'pattern'> {
  const { job, posterior } = input;
  const voltage = job.kit.arc_voltage.set;
  const angleTerm = depthRegressors(
    { diameter: electrode.diameter, current, voltage, travel: 1, pushAngle: job.kit.push_angle },
    posterior.meltingEnergy,
  )[2]!;
  const unitTravel = (voltage * current) / (electrode.diameter ** 2 * posterior.meltingEnergy);
  return { electrode, current, voltage, angleTerm, unitTravel };
}

function taskOf(
  input: SearchInput,
  base: Omit<SolveTask['base'], 'pattern'>,
  pattern: Pattern,
  radius: number,
  depth: DepthDemand,
): SolveTask {
  const { job, posterior } = input;
  const locked = job.locks.travel;
  const slowest = locked ?? job.kit.travel.least;
  const fastest = locked ?? job.kit.travel.most;
  return {
    base: { ...base, pattern },
    pattern,
    belief: posterior.belief.depth,
    energyRange: [Math.log(base.unitTravel / fastest), Math.log(base.unitTravel / slowest)],
    depth,
    run: runDemand(job),
    ridge: ridgeOf(pattern, radius, job.groove.floor_width),
  };
}

/** How much shallower the floor is than the tracks' centre lines, at its worst point inside the zone. */
function ridgeOf(pattern: Pattern, radius: number, zoneWidth: number): number {
  const outermost = Math.abs(trackOffset(pattern, 0));
  const atEdge = heightAt(radius, Math.min(radius, Math.max(0, zoneWidth / 2 - outermost)));
  const between = pattern.tracks > 1 ? heightAt(radius, Math.min(radius, pattern.spacing / 2)) : 0;
  return Math.min(arcHeight(radius), Math.max(atEdge, between));
}

function searchPattern(
  input: SearchInput,
  task: SolveTask,
  width: number,
  bestSoFar: number,
  miss: (next: Miss) => void,
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
  if (alone.depth.least >= alone.depth.most) return { found, lowerMayHelp };
  const worthTrying = (layers: number, passes: number): boolean =>
    leastMerit(task, layers, passes, job)[objective] < best;
  /**
   * Solves, and keeps what also holds in the shops that had no part in solving. The wanted chances are raised a
   * little before solving, and a little more if the fair count falls short.
   */
  const settle = (
    alone: Solved,
    solve: (raised: SolveTask, shops: ShopDraws) => Solved | undefined,
  ): boolean => {
    // One track alone is the cheapest look, all tracks in a few shops the next.
    const scout = hopeless(alone, task) || task.pattern.tracks === 1 ? alone : solve(task, scouts);
    if (scout === undefined) return false;
    if (hopeless(alone, task) || (scout !== alone && scout.shortfall > HOPELESS)) {
      lowerMayHelp ||= atGreatestTravel(scout);
      return missChance(scout, task, miss);
    }
    for (const guard of GUARDS) {
      const raised = { ...task, depth: depthDemand(job, guard) };
      const solved = solve(raised, draws);
      if (solved === undefined) return false;
      lowerMayHelp ||= atGreatestTravel(solved);
      if (solved.shortfall > 0) return missChance(solved, task, miss);
      const lean = fewestStations(raised, solved, draws);
      const fair = tried(task, lean.setup.layers, input.fair);
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
  for (let layers = layersLeast; layers <= layersMost && worthTrying(layers, layers); layers += 1) {
    if (settle(solveBlind(alone, layers, scouts), (raised, shops) => solveBlind(raised, layers, shops))) {
      blindLayers = layers;
      break;
    }
  }
  if (job.plan.gauge_stops === 'never' || job.locks.travel !== undefined) return { found, lowerMayHelp };
  // A stop costs time, so it pays only where it saves layers or makes a plan possible at all.
  for (let layers = Math.max(2, layersLeast); layers <= layersMost && layers < blindLayers; layers += 1) {
    for (let stops = 1; stops <= Math.min(STOPS_MOST, layers - 1); stops += 1) {
      if (!worthTrying(layers, layers - stops)) continue;
      const scout = scoutGauged(alone, layers, stops, stations, scouts);
      if (scout === undefined) continue;
      const solve = (raised: SolveTask, shops: ShopDraws): Solved | undefined =>
        solveGauged(raised, layers, stops, stations, scout.share, shops);
      if (settle(scout.solved, solve)) return { found, lowerMayHelp };
    }
  }
  return { found, lowerMayHelp };

  function atGreatestTravel(solved: Solved): boolean {
    return energiesOf(solved).at(-1)! <= task.energyRange[0];
  }
}

/** Whether tracks that each do as one alone did could not meet the demands together. */
function hopeless(scout: Solved, task: SolveTask): boolean {
  const together = (chance: number): number => chance ** task.pattern.tracks;
  const { reached, notTooDeep, ligamentKept } = scout.chances;
  const slack = HOPELESS * Math.sqrt(task.pattern.tracks);
  return (
    task.depth.assurance - together(reached) > slack ||
    task.depth.assurance - together(notTooDeep) > slack ||
    task.depth.ligamentAssurance - together(ligamentKept) > slack
  );
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
 * Least that a number of layers can take: as many passes as are run in any case, at an energy whose median cuts
 * add up to the least depth. A plan that reaches it surely takes more.
 */
function leastMerit(task: SolveTask, layers: number, passesPerTrack: number, job: Job): Merit {
  const { base, pattern, belief, run, depth } = task;
  const [level, slope, angle] = belief.mean as [number, number, number];
  const wanted =
    (Math.log(depth.least / (layers * base.electrode.diameter)) - level - angle * base.angleTerm) / slope;
  const energy = Math.max(task.energyRange[0], wanted);
  const passes = pattern.tracks * passesPerTrack;
  const travelTime = (passes * run.passLength * Math.exp(energy)) / base.unitTravel;
  const time =
    travelTime + passes * job.rates.start_time + ((passes - 1) * run.passLength) / job.rates.return_travel;
  return {
    time,
    cost: (time / 3600) * job.rates.labour_per_hour,
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

/** Holds a solved set-up to every limit; undefined where a hard one fails. */
function weigh(
  input: SearchInput,
  task: SolveTask,
  solved: Solved,
  width: number,
  miss: (next: Miss) => void,
): Feasible | undefined {
  const { job, limits, fair } = input;
  let worst: Candidate | undefined;
  for (const logEnergy of energiesOf(solved)) {
    const candidate = candidateOf(task, solved, logEnergy, width);
    worst ??= candidate;
    for (const check of limits) {
      const failed = check(candidate, job).filter((limit) => limit.hard && limit.verdict === 'fails');
      if (failed.length > 0) {
        for (const limit of failed) miss(missOf(limit));
        return undefined;
      }
    }
  }
  const effort = effortOf(solved.setup, solved.outcomes, fair, job, task.run.passLength);
  const needed = Float64Array.from(effort.electrodes).sort()[Math.floor(0.9 * (fair.count - 1))]!;
  if (needed > task.base.electrode.count) {
    miss({
      constraint: 'electrode_stock',
      title: 'Electrodes in stock',
      demand: needed,
      limit: task.base.electrode.count,
      unit: 'electrodes',
      remedy: `${needed - task.base.electrode.count} more electrodes of ${(task.base.electrode.diameter * 1000).toFixed(1)} mm`,
      size: needed / Math.max(1, task.base.electrode.count) - 1,
    });
    return undefined;
  }
  return worst === undefined ? undefined : { task, solved, candidate: worst, effort, merit: meritOf(effort) };
}

/** Every ln specific energy that a set-up may be run at, the greatest (deepest, slowest) first. */
export function energiesOf(solved: Solved): number[] {
  const all = solved.setup.layers.flatMap((rule) =>
    rule.kind === 'set' ? [rule.logEnergy] : rule.table.logEnergy.filter((value) => !Number.isNaN(value)),
  );
  const sorted = [...new Set(all)].sort((a, b) => b - a);
  return sorted.length <= 2 ? sorted : [sorted[0]!, sorted.at(-1)!];
}

/** A pass of a set-up as the limit functions see it. */
export function candidateOf(task: SolveTask, solved: Solved, logEnergy: number, width: number): Candidate {
  const { base } = task;
  const [level, slope, angle] = task.belief.mean as [number, number, number];
  return {
    electrode: base.electrode,
    current: base.current,
    voltage: base.voltage,
    pushAngle: Math.PI / 4 + (base.angleTerm * Math.PI) / 12,
    travel: base.unitTravel * Math.exp(-logEnergy),
    tracks: task.pattern.tracks,
    layers: solved.setup.layers.length,
    passLength: task.run.passLength,
    passDepth: base.electrode.diameter * Math.exp(level + slope * logEnergy + angle * base.angleTerm),
    passWidth: width,
  };
}

function missOf(limit: Limit): Miss {
  const scale = Math.max(Math.abs(limit.capacity), Math.abs(limit.demand), 1e-12);
  return {
    constraint: limit.id,
    title: limit.title,
    demand: limit.demand,
    limit: limit.capacity,
    unit: limit.unit,
    remedy: limit.remedy,
    size: Math.abs(limit.demand - limit.capacity) / scale,
  };
}

/** Notes which chance a solved set-up is short of; always false, as the set-up is no plan. */
function missChance(solved: Solved, task: SolveTask, miss: (next: Miss) => void): false {
  const { chances } = solved;
  const { depth } = task;
  const rows = [
    ['depth_reached', 'Chance that the depth is reached', depth.assurance, chances.reached],
    ['not_too_deep', 'Chance that no point is too deep', depth.assurance, chances.notTooDeep],
    ['ligament_kept', 'Chance that the ligament is kept', depth.ligamentAssurance, chances.ligamentKept],
  ] as const;
  for (const [constraint, title, wanted, got] of rows) {
    if (got >= wanted) continue;
    // The size is the whole set-up's shortfall, so that a plan that nearly works is named before one that fails one side only.
    miss({
      constraint,
      title,
      demand: wanted * 100,
      limit: got * 100,
      unit: '%',
      remedy: 'a wider tolerance',
      size: solved.shortfall,
    });
  }
  return false;
}
