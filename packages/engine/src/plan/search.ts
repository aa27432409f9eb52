import { arcHeight, heightAt, passWidth } from '../groove/index.ts';
import type { Job, KitElectrode } from '../job/index.ts';
import { depthRegressors, predictWidth } from '../removal/index.ts';
import type { DepthDemand } from './chance.ts';
import { conjugateBelief } from './conjugate-belief.ts';
import { currentsOf } from './currents.ts';
import { depthDemand, runDemand } from './demand.ts';
import type { Miss, MissNote } from './miss.ts';
import { type Pattern, patternsFor, trackOffset } from './pattern.ts';
import { searchPattern } from './search-pattern.ts';
import type { SolveTask } from './solve.ts';
import type { ElectrodeSearch, Feasible, SearchInput } from './weigh.ts';

/** Everything found: what works, and where the rest failed. */
export interface SearchResult {
  readonly feasible: readonly Feasible[];
  readonly misses: readonly Miss[];
}

/** Searches electrodes, currents, tracks and layers for set-ups that meet every demand. */
export function search(input: SearchInput): SearchResult {
  const feasible: Feasible[] = [];
  const misses = new Map<string, Miss>();
  const miss = (next: Miss): void => {
    const known = misses.get(next.constraint);
    if (known === undefined || next.size < known.size) misses.set(next.constraint, next);
  };
  for (const electrode of electrodesOf(input.job, miss)) {
    if (input.firstOnly && feasible.length > 0) break;
    const rivals = feasible.map(({ merit }) => merit);
    feasible.push(...searchElectrode({ ...input, rivals }, electrode, miss));
  }
  return { feasible, misses: [...misses.values()].sort((a, b) => a.size - b.size) };
}

/** At a lower current the same groove only takes longer, so the greatest current that works is the one. */
function searchElectrode(
  input: ElectrodeSearch,
  electrode: KitElectrode,
  miss: MissNote,
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

/** The kit's electrodes that are in stock, or the locked one of them. */
/** Electrodes to try, thick ones first: they need the fewest passes, and what they find spares the rest. */
function electrodesOf(job: Job, miss: MissNote): readonly KitElectrode[] {
  const locked = job.locks.electrode_diameter;
  const thickFirst = [...job.kit.electrodes].sort((a, b) => b.diameter - a.diameter);
  return thickFirst.filter((electrode) => {
    if (locked !== undefined && Math.abs(electrode.diameter - locked) >= 1e-4) return false;
    if (electrode.count > 0) return true;
    miss({
      constraint: 'electrode_stock',
      title: 'Electrodes in stock',
      demand: 1,
      limit: 0,
      unit: 'electrodes',
      remedy: `electrodes of ${(electrode.diameter * 1000).toFixed(1)} mm in stock`,
      size: 1,
    });
    return false;
  });
}

function searchCurrent(
  input: ElectrodeSearch,
  electrode: KitElectrode,
  current: number,
  miss: MissNote,
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
    belief: conjugateBelief(posterior).depth,
    energyRange: [Math.log(base.unitTravel / fastest), Math.log(base.unitTravel / slowest)],
    depth,
    run: runDemand(job),
    ridge: ridgeOf(pattern, radius, job.groove.floor_width),
    work: input.work,
  };
}

/** How much shallower the floor is than the tracks' centre lines, at its worst point inside the zone. */
function ridgeOf(pattern: Pattern, radius: number, zoneWidth: number): number {
  const outermost = Math.abs(trackOffset(pattern, 0));
  const atEdge = heightAt(radius, Math.min(radius, Math.max(0, zoneWidth / 2 - outermost)));
  const between = pattern.tracks > 1 ? heightAt(radius, Math.min(radius, pattern.spacing / 2)) : 0;
  return Math.min(arcHeight(radius), Math.max(atEdge, between));
}
