import { arcHeight, heightAt, passWidth } from '../groove/index.ts';
import type { Job, KitElectrode } from '../job/index.ts';
import { normalProbability, normalQuantile } from '../numeric/index.ts';
import { inUnit } from '../quantity/index.ts';
import { depthRegressors, PASS_DEPTH_MOST, predictWear, predictWidth } from '../removal/index.ts';
import { depthDemand, runDemand } from './demand.ts';
import { type Merit, meritBy } from './effort.ts';
import {
  energiesOf,
  type Forecast,
  type ForecastTask,
  forecast,
  leastMargins,
  leastMerit,
  leastMeritOfFamily,
  leastMeritOfLayers,
  QUICK_MOST,
  widthForecast,
} from './forecast.ts';
import type { DepthLaw } from './law.ts';
import { LeastFirst } from './least-first.ts';
import type { MissNote } from './miss.ts';
import { type Pattern, patternsFor, trackOffset } from './pattern.ts';
import type { RunDemand } from './run-plan.ts';
import type { SearchInput } from './search-task.ts';
import type { Way } from './way.ts';
import { mostMeasured, type WayFamily, wayFamilies } from './ways.ts';

/** What a prospect is forecast and solved from. */
export type ProspectTask = ForecastTask & { readonly run: RunDemand };

/** A way of one rig, with what it promises. */
export interface Prospect {
  readonly task: ProspectTask;
  readonly way: Way;
  readonly forecast: Forecast;
}

/** Room above, in ln depth, that the roomiest way of a family is forecast to have at least, for the family to be looked at [-]. */
const ROOM_LEAST = -0.04;
/** How much deeper than it must a forecast may aim [-]. */
const DEPTH_ERROR = 0.1;
/** How much more room a forecast may find than the most that a family can have, in ln depth [-]. */
const BOUND_ERROR = 0.06;
/** How much less of a margin a forecast may find than the least that a family needs, in ln depth [-]. */
const MARGIN_ERROR = 0.03;
/** Chance of the width below the wanted one from which on a rig is worth a try [-]. */
const WIDTH_ERROR = 0.04;

/** The same task with another way. */
export function prospectWith(task: ProspectTask, way: Way): Prospect {
  return { task, way, forecast: forecast(task, way) };
}

/** Forecasts of the ways of a job in work: they do not depend on the limits that it is planned within. */
const kept = new WeakMap<Way, Map<string, KeptProspect>>();

/** The forecast of a way, and the law and the costs that it was made with. */
interface KeptProspect extends Pick<ProspectTask, 'law' | 'afterCost'> {
  readonly prospect: Prospect;
}

/** What tells the rigs of a job apart. */
function rigKey({ job, rig }: ProspectTask): string {
  const { electrode, current, energyRange, pattern } = rig;
  return [job.kit.electrodes.indexOf(electrode), current, energyRange, pattern.tracks, pattern.spacing].join(
    ' ',
  );
}

/** The forecast of a way on a rig, kept from before where it was made already. */
function keptProspect(task: ProspectTask, key: string, way: Way): Prospect {
  const { law, afterCost } = task;
  const ofWay = kept.get(way) ?? new Map<string, KeptProspect>();
  kept.set(way, ofWay);
  const known = ofWay.get(key);
  if (known?.law === law && known.afterCost === afterCost) return known.prospect;
  const prospect = prospectWith(task, way);
  ofWay.set(key, { law, afterCost, prospect });
  return prospect;
}

/** What is forecast: the ways of an electrode at a current, those of every track pattern. */
export interface ProspectQuestion {
  readonly electrode: KitElectrode;
  readonly current: number;
  /** Which ways are meant on a pattern. */
  readonly meantOn: (pattern: Pattern) => (way: Way) => boolean;
}

/** A way on a pattern of tracks. */
export interface PatternWay {
  readonly pattern: Pattern;
  readonly way: Way;
}

/** The ways of one family on one rig that are in reach and that none beats. */
export interface FamilyProspects {
  readonly task: ProspectTask;
  readonly family: WayFamily;
  readonly prospects: readonly Prospect[];
}

/** What was forecast of the ways that a question means. */
export interface Looked {
  readonly question: ProspectQuestion;
  /** Ways that were forecast; the others are passed over for now. */
  readonly ways: readonly PatternWay[];
  /** Those of them that want to travel faster than the carriage does. */
  readonly tooQuick: readonly PatternWay[];
}

/** The ways that may be best, by family, and what was looked at for each question. */
export function prospectsOf(
  input: SearchInput,
  law: DepthLaw,
  questions: readonly ProspectQuestion[],
  miss: MissNote,
): { readonly list: readonly FamilyProspects[]; readonly looked: readonly Looked[] } {
  const look = new Look(input, miss);
  for (const question of questions) {
    for (const task of tasksOf(input, law, question, miss)) look.addRig(task, question);
  }
  const families = look.run();
  return {
    list: families.flatMap((each) => bestOf(each, input.job, miss)),
    looked: questions.map((question) => {
      const asked = families.filter((each) => each.question === question);
      const on = (of: (family: OpenFamily) => readonly Way[]): PatternWay[] =>
        asked.flatMap((each) => of(each).map((way) => ({ pattern: each.task.rig.pattern, way })));
      return {
        question,
        ways: on(({ all }) => all.map(({ way }) => way)),
        tooQuick: on(({ tooQuick }) => tooQuick),
      };
    }),
  };
}

/** A family on a rig that may be best, and what was forecast of it. */
interface OpenFamily {
  readonly question: ProspectQuestion;
  readonly task: ProspectTask;
  /** What tells its rig apart. */
  readonly key: string;
  readonly family: WayFamily;
  /** Those of its ways that are meant. */
  readonly ways: readonly Way[];
  /** Its place among all that could be opened [-]: results do not depend on what was opened first. */
  readonly place: number;
  readonly all: Prospect[];
  readonly inReach: Prospect[];
  readonly tooQuick: Way[];
}

function nothingSeen(): Pick<OpenFamily, 'all' | 'inReach' | 'tooQuick'> {
  return { all: [], inReach: [], tooQuick: [] };
}

/** More than a job has families of ways [-]. */
const FAMILIES_MOST = 1000;

/**
 * Forecasts what may take least first, a rig before its families and a family before its ways: what is forecast on the way
 * lets most of the rest be passed over unopened.
 */
class Look {
  readonly #input: SearchInput;
  readonly #miss: MissNote;
  readonly #bounds = new LeastFirst<Merit>();
  readonly #opened: OpenFamily[] = [];
  #rigs = 0;

  constructor(input: SearchInput, miss: MissNote) {
    this.#input = input;
    this.#miss = miss;
  }

  addRig(task: ProspectTask, question: ProspectQuestion): void {
    const place = FAMILIES_MOST * this.#rigs++;
    this.#bounds.add(leastMeritOfLayers(task, 1), () => {
      const { pattern } = task.rig;
      const isMeant = question.meantOn(pattern);
      const key = rigKey(task);
      const byLayers = new Map<number, OpenFamily[]>();
      wayFamilies(this.#input.job, pattern.tracks, task.passLength).forEach((family, nth) => {
        const ways = this.#waysOf(family).filter(isMeant);
        if (ways.length === 0) return;
        const open = { question, task, key, family, ways, place: place + nth, ...nothingSeen() };
        const { layersLeast } = family;
        byLayers.set(layersLeast, [...(byLayers.get(layersLeast) ?? []), open]);
      });
      for (const [layersLeast, families] of byLayers) {
        this.#bounds.add(leastMeritOfLayers(task, layersLeast), () => {
          for (const family of families) this.#addFamily(family);
        });
      }
    });
  }

  /** Where one plan is enough, those that measure most have the most room. */
  #waysOf(family: WayFamily): readonly Way[] {
    return this.#input.firstOnly ? mostMeasured(family) : family.ways;
  }

  /** Opens all that may be best by the job's objective, then all that may be quickest. */
  run(): readonly OpenFamily[] {
    const { job, horizon } = this.#input;
    for (const objective of new Set([job.plan.objective, 'time'] as const)) {
      this.#bounds.run(
        (least) => meritBy(least, objective),
        (value) => value > BEYOND * horizon[objective],
      );
    }
    return this.#opened.sort((a, b) => a.place - b.place);
  }

  #addFamily(open: OpenFamily): void {
    const { task, family, ways } = open;
    const margins = leastMargins(task, family);
    const room = Math.log(task.most / task.required) - margins.below - margins.above;
    if (room < ROOM_LEAST - BOUND_ERROR) {
      const spread = margins.below / normalQuantile(task.assurance);
      const ligamentBinds = task.most < task.demand.most;
      noteRoom({ slack: room, spread, ligamentBinds }, this.#input.job, this.#miss);
      return;
    }
    const depth = task.required * Math.exp(Math.max(0, margins.below - MARGIN_ERROR));
    this.#bounds.add(leastMeritOfFamily(task, family, depth), () => {
      this.#opened.push(open);
      for (const way of ways) this.#bounds.add(leastMerit(task, way, depth), () => this.#forecast(open, way));
    });
  }

  #forecast({ task, key, all, inReach, tooQuick }: OpenFamily, way: Way): void {
    const each = keptProspect(task, key, way);
    all.push(each);
    if (isTooDeep(each)) {
      noteDepth(each, this.#miss);
      return;
    }
    noteMerit(this.#input, each);
    const { outOfRange, quick, slack } = each.forecast;
    if (outOfRange === 0) inReach.push(each);
    // A lower current cuts thinner, which helps where there is little room.
    if (outOfRange === -1 || (outOfRange === 0 && quick > QUICK_MOST && slack < AMPLE_ROOM))
      tooQuick.push(way);
  }
}

/** What an electrode at a current is forecast with on each pattern of tracks that may make the groove. */
function tasksOf(
  input: SearchInput,
  law: DepthLaw,
  { electrode, current }: ProspectQuestion,
  miss: MissNote,
): ProspectTask[] {
  const { job, belief } = input;
  const { assurance } = depthDemand(job, 0);
  const width = predictWidth(belief, electrode.diameter);
  if (tooSharp(width.p50 / 2, job, miss)) return [];
  return patternsOf(width.p50, job, miss)
    .map((pattern) => taskOf(input, law, electrode, current, pattern, width))
    .filter((task) => !ridgeTooHigh(task, miss) && !widthTooUnsure(task, assurance, miss));
}

/** Of the ways of a family that were forecast, those that none beats; none where they are out of reach or have no room. */
function bestOf(
  { task, family, all, inReach }: OpenFamily,
  { plan, locks }: Job,
  miss: MissNote,
): FamilyProspects[] {
  if (all.length === 0) return [];
  if (inReach.length === 0) {
    if (!all.some(isTooDeep)) {
      // Some may be too quick for the carriage and others too slow.
      for (const end of [-1, 1] as const) {
        const beyond = all.find(({ forecast }) => forecast.outOfRange === end);
        if (beyond !== undefined) noteRange(beyond, miss);
      }
    }
    // The table ends and the shops decide where the middle of the law is just out of reach.
    if (locks.travel === undefined) return [];
  }
  const meant = inReach.length > 0 ? inReach : all;
  const roomiest = meant.reduce((most, each) => (each.forecast.slack > most.forecast.slack ? each : most));
  if (locks.travel !== undefined) return [{ task, family, prospects: [roomiest] }];
  if (roomiest.forecast.slack >= ROOM_LEAST)
    return [{ task, family, prospects: unbeaten(meant, [...new Set([plan.objective, 'time'] as const)]) }];
  noteRoom(roomiest.forecast, task.job, miss);
  return [];
}

/** How much more than what is forecast elsewhere, or was found, a rig or a family must take at least to be passed over [-]. */
export const BEYOND = 1.02;
/** Room above, in ln depth, with which a way need not cut thinner [-]. */
const AMPLE_ROOM = 0.15;
/** Room above, in ln depth, from which on a forecast is sure enough to pass others over [-]. */
const SURE_ROOM = 0.06;

function noteMerit(
  { job, horizon }: SearchInput,
  { forecast: { slack, outOfRange, merit } }: Prospect,
): void {
  if (horizon.found || slack < SURE_ROOM || outOfRange !== 0) return;
  for (const objective of [job.plan.objective, 'time'] as const) {
    horizon[objective] = Math.min(horizon[objective], meritBy(merit, objective));
  }
}

/** Of ways, those that none beats in room and in what they take by every objective that is searched for. */
function unbeaten(all: readonly Prospect[], objectives: readonly Job['plan']['objective'][]): Prospect[] {
  const kept = new Set<Prospect>();
  for (const objective of objectives) {
    const by = ({ forecast }: Prospect): number => meritBy(forecast.merit, objective);
    let room = Number.NEGATIVE_INFINITY;
    for (const each of [...all].sort((a, b) => by(a) - by(b) || b.forecast.slack - a.forecast.slack)) {
      if (each.forecast.slack <= room) continue;
      room = each.forecast.slack;
      kept.add(each);
    }
  }
  return [...kept];
}

/** Notes that a way has no room, as the chance that it comes to where ln depth is normal. */
function noteRoom(
  { slack, spread, ligamentBinds }: Pick<Forecast, 'slack' | 'spread' | 'ligamentBinds'>,
  job: Job,
  miss: MissNote,
): void {
  const { assurance, ligamentAssurance } = depthDemand(job, 0);
  const wanted = ligamentBinds ? ligamentAssurance : assurance;
  const chance = normalProbability(normalQuantile(wanted) + slack / spread);
  miss({
    constraint: ligamentBinds ? 'ligament_kept' : 'not_too_deep',
    title: ligamentBinds ? 'Chance that the ligament is kept' : 'Chance that no point is too deep',
    demand: inUnit(wanted, '%'),
    limit: inUnit(chance, '%'),
    unit: '%',
    remedy: 'a wider tolerance',
    size: 1 - slack,
  });
}

/** Whether a pass is to cut more than any pass should, at whatever current; a locked travel cuts what it does. */
function isTooDeep({ task, way, forecast: { logTarget } }: Prospect): boolean {
  const most = PASS_DEPTH_MOST * task.rig.electrode.diameter * (1 + DEPTH_ERROR);
  return task.job.locks.travel === undefined && deepestCut(way) * Math.exp(logTarget) > most;
}

/** Part of the depth that the deepest pass of a way takes off [-]. */
function deepestCut({ tryout, shares }: Way): number {
  return tryout?.kind === 'run_in' ? 1 : Math.max(...shares);
}

function noteDepth({ task, way, forecast: { logTarget } }: Prospect, miss: MissNote): void {
  const demand = deepestCut(way) * Math.exp(logTarget);
  const limit = PASS_DEPTH_MOST * task.rig.electrode.diameter;
  miss({
    constraint: 'depth_per_pass',
    title: 'Depth of one pass',
    demand: inUnit(demand, 'mm'),
    limit: inUnit(limit, 'mm'),
    unit: 'mm',
    remedy: 'more layers, or a larger electrode',
    size: demand / limit - 1,
  });
}

function noteRange({ task, way, forecast: { outOfRange, logTarget } }: Prospect, miss: MissNote): void {
  const slow = outOfRange === 1;
  const { least, most } = task.job.kit.travel;
  const energies = energiesOf(task, way, Math.exp(logTarget));
  const wanted = task.rig.unitTravel / Math.exp(slow ? Math.max(...energies) : Math.min(...energies));
  miss({
    constraint: slow ? 'travel_least' : 'travel_most',
    title: slow ? 'Travel, least' : 'Travel, greatest',
    demand: inUnit(wanted, 'mm/min'),
    limit: inUnit(slow ? least : most, 'mm/min'),
    unit: 'mm/min',
    remedy: slow ? 'a carriage that travels more slowly' : 'a carriage that travels faster',
    size: 1,
  });
}

function ridgeTooHigh({ required, most }: ProspectTask, miss: MissNote): boolean {
  if (required < most) return false;
  miss({
    constraint: 'ridge_height',
    title: 'Depth of the tracks, for the ridges to be deep enough',
    demand: inUnit(required, 'mm'),
    limit: inUnit(most, 'mm'),
    unit: 'mm',
    remedy: 'a wider tolerance, a narrower floor, or a larger electrode',
    size: required / most - 1,
  });
  return true;
}

function widthTooUnsure(task: ProspectTask, assurance: number, miss: MissNote): boolean {
  const inBand = widthForecast(task, Math.sqrt(task.required * task.most));
  if (inBand >= assurance - WIDTH_ERROR) return false;
  miss({
    constraint: 'width_in_band',
    title: 'Chance that the width lies in its band',
    demand: inUnit(assurance, '%'),
    limit: inUnit(inBand, '%'),
    unit: '%',
    remedy: 'a wider band of widths, or another electrode',
    size: assurance - inBand,
  });
  return true;
}

function tooSharp(radius: number, job: Job, miss: MissNote): boolean {
  if (radius >= job.groove.root_radius_least) return false;
  miss({
    constraint: 'root_radius',
    title: 'Root radius',
    demand: inUnit(job.groove.root_radius_least, 'mm'),
    limit: inUnit(radius, 'mm'),
    unit: 'mm',
    remedy: 'a larger electrode',
    size: job.groove.root_radius_least / radius - 1,
  });
  return true;
}

function patternsOf(width: number, job: Job, miss: MissNote): Pattern[] {
  const demand = depthDemand(job, 0);
  const surfaceWidth = passWidth({ width, depth: (demand.least + demand.most) / 2 });
  const patterns = patternsFor({
    passWidth: width,
    surfaceWidth,
    widthLeast: job.groove.width.least,
    widthMost: job.groove.width.most,
    tracksMost: job.plan.tracks_most,
    tracksLocked: job.locks.tracks,
    spacingLocked: job.locks.track_spacing,
  });
  if (patterns.length > 0) return patterns;
  const tooWide = surfaceWidth > job.groove.width.most;
  const limit = tooWide ? job.groove.width.most : job.groove.width.least;
  miss({
    constraint: tooWide ? 'width_most' : 'width_least',
    title: 'Width at the surface',
    demand: inUnit(surfaceWidth, 'mm'),
    limit: inUnit(limit, 'mm'),
    unit: 'mm',
    remedy: tooWide
      ? 'a smaller electrode, or a wider groove'
      : 'a larger electrode, more tracks, or a narrower groove',
    size: Math.abs(surfaceWidth / limit - 1),
  });
  return [];
}

function taskOf(
  input: SearchInput,
  law: DepthLaw,
  electrode: KitElectrode,
  current: number,
  pattern: Pattern,
  width: { readonly p05: number; readonly p50: number; readonly p95: number },
): ProspectTask {
  const { job, belief } = input;
  const voltage = job.kit.arc_voltage.set;
  const setting = {
    diameter: electrode.diameter,
    current,
    voltage,
    travel: 1,
    pushAngle: job.kit.push_angle,
  };
  const angleTerm = depthRegressors(setting, belief.meltingEnergy)[2]!;
  const unitTravel = (voltage * current) / (electrode.diameter ** 2 * belief.meltingEnergy);
  const slowest = job.locks.travel ?? job.kit.travel.least;
  const quickest = job.locks.travel ?? job.kit.travel.most;
  const demand = depthDemand(job, 0);
  const ridge = ridgeOf(pattern, width.p50 / 2, job.groove.floor_width);
  const run = runDemand(job, belief);
  const bar = (Math.PI * electrode.diameter ** 2) / 4;
  return {
    law,
    rig: {
      electrode,
      current,
      voltage,
      angleTerm,
      unitTravel,
      energyRange: [Math.log(unitTravel / quickest), Math.log(unitTravel / slowest)],
      pattern,
    },
    run,
    passLength: run.passLength,
    readingSd: run.readingSd,
    required: demand.least + ridge,
    most: Math.min(demand.most, demand.mostForLigament),
    assurance: demand.assurance,
    job,
    demand,
    mostForLigament: demand.mostForLigament,
    passWidth: width.p50,
    widthSd: (width.p95 - width.p05) / (2 * 1.645),
    meltingEnergy: belief.meltingEnergy,
    wear: (predictWear(belief, electrode.diameter, current).p50 / current) * bar,
    afterCost: input.afterCost,
    paths: input.scouts.paths,
  };
}

/** How much shallower the floor is than the tracks' centre lines, at its worst point inside the zone. */
function ridgeOf(pattern: Pattern, radius: number, zoneWidth: number): number {
  const outermost = Math.abs(trackOffset(pattern, 0));
  const atEdge = heightAt(radius, Math.min(radius, Math.max(0, zoneWidth / 2 - outermost)));
  const between = pattern.tracks > 1 ? heightAt(radius, Math.min(radius, pattern.spacing / 2)) : 0;
  return Math.min(arcHeight(radius), Math.max(atEdge, between));
}
