import { halfWidthAt } from '../groove/index.ts';
import type { Job } from '../job/index.ts';
import { normalProbability, normalQuantile } from '../numeric/index.ts';
import type { DepthDemand } from './chance.ts';
import { type Merit, type OnceTaken, takes } from './effort.ts';
import { marginsAfterStop, probability } from './last-cut.ts';
import { commonCovariance, type DepthLaw, middleDepth } from './law.ts';
import { OUT_OF_REACH, rowReach } from './make-tables.ts';
import type { Doubt } from './outcome.ts';
import { ceilingAt } from './pass-cut.ts';
import { extremesWith, stationVariance } from './seam-paths.ts';
import { LATER_PASS_SD } from './shop-draws.ts';
import { floorAtStop } from './stop-table.ts';
import { energyForCut, heldEnergy, readingVariance, type TableTask } from './table-task.ts';
import { courseWeight, type Rig, RUN_IN_SHARE, type Way } from './way.ts';
import { leastMeasured, type WayFamily } from './ways.ts';
import { type AfterCostFunction, grooveLeft } from './whole-cost.ts';

/** What a way promises before it is run in shops: normal in ln depth. */
export interface Forecast {
  /** ln of the depth that the tracks' centre lines are aimed at [m]. */
  readonly logTarget: number;
  /** Standard deviation of ln depth about it, extremes along the seam included [-]. */
  readonly spread: number;
  /** Room left above, in ln depth, the least of depth and ligament; below 0: too deep too often [-]. */
  readonly slack: number;
  /** Whether the ligament is what leaves the least room. */
  readonly ligamentBinds: boolean;
  /** Energies wanted outside the range of the travel: -1 quicker, 1 slower than it goes, 0 inside [-]. */
  readonly outOfRange: -1 | 0 | 1;
  /** Share of the shops, about, in which some setting wants to be quicker than the carriage goes [-]. */
  readonly quick: number;
  readonly merit: Merit;
}

/** Everything a forecast needs besides the way. */
export interface ForecastTask extends Omit<TableTask, 'way'> {
  readonly job: Job;
  readonly demand: DepthDemand;
  /** Depth of the tracks' centre lines that keeps the ligament [m]. */
  readonly mostForLigament: number;
  /** Standard deviation of the width of one pass [m]. */
  readonly widthSd: number;
  /** Energy to heat and melt a unit volume of the metal [J/m3]. */
  readonly meltingEnergy: number;
  /** Middle wear [m3/(A s)]. */
  readonly wear: number;
  readonly afterCost: AfterCostFunction | undefined;
}

/** Part of the shops that may want to travel quicker than the carriage before a lower current is looked at [-]. */
export const QUICK_MOST = 0.02;
/** Row width of a table in standard deviations of its readings, as a uniform error [-]. */
const ROW_ERROR = (2 * 2.8) / 14 / Math.sqrt(12);

/** Quantiles of the few chances that a search asks for, over and over. */
const quantiles = new Map<number, number>();
const QUANTILES_MOST = 100;

function quantileAt(chance: number): number {
  const known = quantiles.get(chance);
  if (known !== undefined) return known;
  const made = normalQuantile(chance);
  if (quantiles.size >= QUANTILES_MOST) quantiles.clear();
  quantiles.set(chance, made);
  return made;
}

/** Forecasts how a way does, to set it in order with others and to start its solving from. */
export function forecast(task: ForecastTask, way: TableTask['way']): Forecast {
  const { rig, demand, required, most, mostForLigament } = task;
  const z = quantileAt(demand.assurance);
  const zLigament = quantileAt(demand.ligamentAssurance);
  // The spread depends a little on the depth that is aimed at, and that on the spread: a rough look says where.
  const rough = marginsOf(task, way, Math.sqrt(required * Math.max(required, most)), z, true);
  const margins = marginsOf(task, way, required * Math.exp(rough.below), z);
  const logTarget = Math.log(required) + margins.below;
  const target = Math.exp(logTarget);
  const toMost = Math.log(most) - logTarget - margins.above;
  const toLigament = Math.log(mostForLigament) - logTarget - margins.above - (zLigament - z) * margins.spread;
  const wanted = energiesOf(task, way, target);
  const [low, high] = rig.energyRange;
  const slower = Math.max(...wanted) > high;
  // What is cut after a stop is set by a reading: where little is left, at the end of the travel or not at all.
  const setBlind = way.tryout?.kind === 'run_in' ? 2 : way.shares.length - way.stops;
  const quicker = Math.min(...wanted.slice(0, setBlind)) < low;
  return {
    logTarget,
    spread: margins.spread,
    slack: Math.min(toMost, toLigament),
    ligamentBinds: toLigament < toMost,
    outOfRange: slower ? 1 : quicker ? -1 : 0,
    quick: margins.quick,
    merit: meritOfWay(task, way, wanted, target * margins.mean, margins),
  };
}

/** ln specific energies of the passes of a way that is aimed at a depth, whatever the travel allows. */
export function energiesOf({ law, rig }: ForecastTask, { tryout, shares }: Way, target: number): number[] {
  const parts = tryout?.kind === 'run_in' ? [1, RUN_IN_SHARE, 1 - RUN_IN_SHARE] : shares;
  return parts.map((part) => energyForCut(law, rig, part * target));
}

/** What a way takes on the mean that sets these energies and leaves this depth. */
function meritOfWay(
  task: ForecastTask,
  way: Way,
  energies: readonly number[],
  depth: number,
  { known, left }: Pick<Margins, 'known' | 'left'>,
): Merit {
  const { law, rig, job, passLength } = task;
  const { tracks } = rig.pattern;
  const { tryout, shares, stops } = way;
  // Energies read off a table vary from shop to shop, and time is convex in them.
  const swell = Math.exp(known / (2 * law.mean[1] ** 2));
  const lengths =
    tryout?.kind === 'run_in' ? [passLength - tryout.length, tryout.length, tryout.length] : undefined;
  let travelTime = 0;
  energies.forEach((energy, index) => {
    const set = tryout === undefined && index < shares.length - stops;
    const run = index === energies.length - 1 ? 1 - left : 1;
    const stretch = lengths?.[index] ?? passLength * tracks * run;
    travelTime += (stretch * Math.exp(heldEnergy(rig, energy)) * (set ? 1 : swell)) / rig.unitTravel;
  });
  const trialTravelTime =
    tryout?.kind === 'trial'
      ? (tryout.length * Math.exp(heldEnergy(rig, Math.max(...energies)))) / rig.unitTravel
      : 0;
  const passes = lengths?.length ?? (shares.length - left) * tracks;
  const taken = takes(
    job,
    rig,
    way,
    passLength,
  )({ travelTime, trialTravelTime, passes, gauged: stops, wear: task.wear }, (burnt) => burnt + 0.5);
  return meritWith(task, taken, depth);
}

/** What was taken, and what comes after the arc for the groove that is left. */
function meritWith(
  { job, rig, passWidth, afterCost }: ForecastTask,
  { jobTime, cost, energy }: OnceTaken,
  depth: number,
): Merit {
  const after = afterCost?.(grooveLeft(passWidth, depth, rig.pattern, job.seam.length)).cost ?? 0;
  return { time: jobTime, cost: cost + after, heat: energy };
}

/**
 * Margins below and above the depth aimed at, in ln, that every way of a family needs at least: once nothing is in doubt
 * any more but how the passes vary along the seam, and where no stop sees them from pass to pass.
 */
export function leastMargins(
  task: ForecastTask,
  { ways }: WayFamily,
): { readonly below: number; readonly above: number } {
  const { law, rig, demand, passLength } = task;
  const { tryout, stops } = ways[0]!;
  // Blind passes may be held by the energy balance.
  if (tryout === undefined && stops === 0) return { below: 0, above: 0 };
  const runIn = tryout?.kind === 'run_in';
  const weight = runIn ? 1 : Math.min(...ways.map(({ shares }) => courseWeight(shares)));
  const extremes = extremesWith(task.paths(passLength), 1);
  const along = weight * law.levels.seam * extremes.mean;
  const one = weight * Math.hypot(stops > 0 ? 0 : law.levels.pass, law.levels.seam * extremes.sd);
  const z = quantileAt(demand.assurance);
  const { tracks } = rig.pattern;
  if (tracks === 1) return { below: z * one + along, above: z * one + along };
  const ofTracks = quantileAt(1 - 1 / (tracks + 1.5)) * one + along;
  return { below: z * 0.6 * one + ofTracks * Math.SQRT1_2, above: z * 0.6 * one + ofTracks };
}

/** What a way takes at least that is aimed at this depth at least: with nothing to spare, and its last layer left out as often as a stop may say so. */
export function leastMerit(task: ForecastTask, way: Way, depth: number): Merit {
  const left = way.stops > 0 ? leftMost(task, way) : 0;
  return meritOfWay(task, way, energiesOf(task, way, depth), depth, { known: 0, left });
}

/** What every way of a family takes at least that is aimed at this depth at least: as those do that measure least. */
export function leastMeritOfFamily(task: ForecastTask, family: WayFamily, depth: number): Merit {
  const merits = leastMeasured(family).map((way) => leastMerit(task, way, depth));
  const least = (key: keyof Merit): number => Math.min(...merits.map((merit) => merit[key]));
  return { time: least('time'), cost: least('cost'), heat: least('heat') };
}

/** Share of the shops, at most, in which the floor before the last layer is deep enough: aimed as deep as the drawing allows, and nothing known. */
function leftMost(task: ForecastTask, { shares }: Way): number {
  const { law, rig, required, most } = task;
  const energy = heldEnergy(rig, energyForCut(law, rig, required));
  const spread = Math.sqrt(
    commonCovariance(law, energy, energy, rig.angleTerm) + law.levels.pass ** 2 + LATER_PASS_SD ** 2,
  );
  return probability(Math.log(((1 - shares.at(-1)!) * most) / required) / spread);
}

/**
 * What every way of so many layers takes at least: the travel of one pass per track that just reaches in the middle, and
 * nothing measured. Depth rises faster than the energy that it takes, so that more layers only take more.
 */
export function leastMeritOfLayers(task: ForecastTask, layers: number): Merit {
  const { law, rig, job, passLength, required, wear } = task;
  const { tracks } = rig.pattern;
  const energy = heldEnergy(rig, energyForCut(law, rig, required));
  const travelTime = (tracks * passLength * Math.exp(energy)) / rig.unitTravel;
  const run = { travelTime, trialTravelTime: 0, passes: layers * tracks, gauged: 0, wear };
  const taken = takes(job, rig, NOTHING_MEASURED, passLength)(run, (burnt) => burnt);
  return meritWith(task, taken, required);
}

const NOTHING_MEASURED = { tryout: undefined, stations: 1 };

/** How far below and above the target the depth may come, in ln, and what makes it so. */
interface Margins {
  readonly below: number;
  readonly above: number;
  readonly spread: number;
  /** Variance of ln depth that readings tell and settings follow [-]. */
  readonly known: number;
  /** Share of the shops in which some setting wants to be quicker than the carriage goes [-]. */
  readonly quick: number;
  /** Mean depth in parts of the one aimed at [-]. */
  readonly mean: number;
  /** Share of the shops in which the floor is left as it was gauged before the last layer [-]. */
  readonly left: number;
}

/** The margins of a way at a target; roughly: without what tables and the ends of the travel do to them. */
function marginsOf(task: ForecastTask, way: Way, target: number, wanted: number, roughly = false): Margins {
  const { law, rig, passLength, readingSd, demand } = task;
  const { tracks } = rig.pattern;
  const { tryout, shares, stops } = way;
  const { pass, seam } = law.levels;
  const largest = Math.max(...shares);
  const energy = heldEnergy(rig, energyForCut(law, rig, largest * target));
  const prior = commonCovariance(law, energy, energy, rig.angleTerm);
  const extremes = extremesWith(task.paths(passLength), way.stations);
  let common = prior;
  let known = 0;
  let quick = 0;
  let z = wanted;
  if (tryout !== undefined) {
    const depth = (tryout.kind === 'run_in' ? RUN_IN_SHARE : largest) * target;
    const reading = readingVariance(task, tryout, depth);
    const error = reading + ROW_ERROR ** 2 * (prior + reading);
    common = (prior * error) / (prior + error);
    known = prior - common;
    if (!roughly) {
      const asked = askedAfter(task, way, target, Math.sqrt(prior + reading), common);
      quick = asked.quick;
      // Where a table says to stop and ask, the depth is not reached: the other shops must make up for them.
      if (stops === 0) z = normalQuantile(Math.min(SURE, demand.assurance + asked.share));
    }
  }
  const last = shares.length - 1;
  let own = 0;
  let more = { below: 0, above: 0, mean: 1, left: 0 };
  const ofCourse = courseWeight(shares);
  const weight = seam * (tryout?.kind === 'run_in' ? 1 : ofCourse);
  if (stops === 0) {
    own = (pass * ofCourse) ** 2 + ((1 - shares[0]!) * LATER_PASS_SD) ** 2;
  } else {
    let sum = 0;
    const targets = shares.map((share) => {
      sum += share;
      return share === 0 ? 0 : target * sum;
    });
    const state = floorAtStop(task, way, last, targets, energy);
    const before = shares.slice(0, last);
    // The course shows more in a floor of fewer layers.
    const weightLeft = (seam * courseWeight(before)) / before.reduce((total, share) => total + share, 0);
    const station = stationVariance(passLength, way.stations, law.seamRange);
    const error = Math.sqrt(readingSd ** 2 / way.stations + (seam * state.depth) ** 2 * station);
    const variance = state.own + (error / state.depth) ** 2;
    const row = ROW_ERROR ** 2 * (state.common + variance);
    const part = shares[last]!;
    const left = (state.common * variance) / (state.common + variance);
    known += state.common - left;
    common = part ** 2 * left;
    own =
      (error / target) ** 2 +
      row * (state.depth / target) ** 2 +
      part ** 2 * (pass ** 2 + LATER_PASS_SD ** 2);
    const plain = z * Math.sqrt(common + own + (weight * extremes.sd) ** 2);
    const floorSd = Math.sqrt(state.common + state.own);
    // The cut before the last was set by a reading too: what it was changed by is not known to the table.
    const earlier = stops > 1 && !roughly ? floorAtStop(task, way, last - 1, targets, energy) : undefined;
    const changed =
      earlier === undefined
        ? 0
        : (Math.sqrt(earlier.common + earlier.own) * earlier.depth) / (state.depth - earlier.depth);
    const least = cutAtQuickest(law, rig) / target;
    // Without that there is no room already, and the closer look is spared.
    const room =
      !roughly && Math.log(task.most / task.required) - 2 * (plain + weight * extremes.mean) > NO_ROOM;
    if (room) {
      const after = marginsAfterStop(
        {
          floor: state.depth / target,
          spread: floorSd,
          gain: state.both / (state.common + state.own),
          least,
          leastSpread: Math.sqrt(
            Math.max(0, prior - (tryout === undefined && stops === 1 ? state.common : 0)),
          ),
          error: error / target,
          own: Math.hypot(pass, LATER_PASS_SD, changed),
          required: task.required / target,
          most: task.most / target,
          leftMargin:
            z * Math.hypot(error / state.depth, weightLeft * extremes.sd) + weightLeft * extremes.mean,
          runMargin: plain + weight * extremes.mean,
          along: weight * extremes.sd,
        },
        demand.assurance,
      );
      more = { ...after, below: after.below - plain, above: after.above - plain };
    }
    // Shops whose floor leaves less to cut than the carriage can.
    const thin = Math.log(Math.max(1e-9, (1 - least) / (state.depth / target)));
    quick = Math.max(quick, probability(-thin / floorSd));
  }
  if (tracks === 1) {
    const spread = Math.sqrt(common + own + (weight * extremes.sd) ** 2);
    const margin = z * spread + weight * extremes.mean;
    const above =
      tryout === undefined && stops === 0 && !roughly
        ? underCeiling(task, way, target, { above: margin, spread, along: weight * extremes.mean, z })
        : margin + more.above;
    return { below: margin + more.below, above, spread, known, quick, mean: more.mean, left: more.left };
  }
  const one = Math.hypot(Math.sqrt(own), weight * extremes.sd);
  const most = quantileAt(1 - 1 / (tracks + 1.5));
  const spread = Math.sqrt(common + (0.6 * one) ** 2);
  const above = z * spread + most * one + weight * extremes.mean + more.above;
  const below = z * spread + (most * one + weight * extremes.mean) / Math.SQRT2 + more.below;
  return { below, above, spread, known, quick, mean: more.mean, left: more.left };
}

/** Halvings of the width that decides how deep blind passes come, and how far from the middle it is sought, in standard deviations [-]. */
const CEILING_STEPS = 10;
const WIDTH_MOST = 2.5;

/**
 * How far above the target blind passes come, in ln: too deep are only those shops that cut deeply and narrowly enough,
 * since the energy balance lets no wide pass go deep.
 */
function underCeiling(
  { law, rig, passWidth, widthSd, meltingEnergy }: ForecastTask,
  { shares }: Way,
  target: number,
  {
    above,
    spread,
    along,
    z,
  }: { readonly above: number; readonly spread: number; readonly along: number; readonly z: number },
): number {
  const energies = shares.map((share) => heldEnergy(rig, energyForCut(law, rig, share * target)));
  /** ln of the ceiling of passes that are so many standard deviations wider than the middle, in parts of the target. */
  const ceiling = (wider: number): number => {
    const width = Math.max(rig.electrode.diameter, passWidth + wider * widthSd);
    const depth = energies.reduce((sum, energy) => sum + ceilingAt(rig, energy, width, meltingEnergy), 0);
    return Math.log(depth / target);
  };
  const misses = probability(-z);
  // Where even the widest passes may come as deep as that, the balance changes nothing.
  if (along + ceiling(WIDTH_MOST) >= above) return above;
  let [low, high] = [-WIDTH_MOST, WIDTH_MOST];
  for (let step = 0; step < CEILING_STEPS; step += 1) {
    const middle = (low + high) / 2;
    if (probability(middle) * probability(-ceiling(middle) / spread) > misses) high = middle;
    else low = middle;
  }
  return Math.min(above, along + ceiling(low));
}

/** Room, in ln depth, below which a way is not looked at more closely [-]. */
const NO_ROOM = -0.06;
/** Chance above which no quantile is asked for [-]. */
const SURE = 0.9999;

/** Least that a pass cuts in a middle shop: at the quickest travel [m]. */
function cutAtQuickest(law: DepthLaw, rig: Rig): number {
  return rig.electrode.diameter * Math.exp(middleDepth(law, rig.energyRange[0], rig.angleTerm));
}

/**
 * Shops, about, in which the table after a trial or a run-in says to stop and ask, and those in which some setting
 * wants to be quicker than the carriage goes: readings are normal in ln with this standard deviation.
 */
function askedAfter(
  task: ForecastTask,
  way: Way,
  target: number,
  spread: number,
  common: number,
): { readonly share: number; readonly quick: number } {
  const { law, rig, most } = task;
  const { tryout, shares, stops } = way;
  const slope = law.mean[1];
  const [low, high] = rig.energyRange;
  const runIn = tryout?.kind === 'run_in';
  const set = stops > 0 ? shares.slice(0, shares.length - stops) : shares;
  const energies = (runIn ? [1] : set).map((share) => energyForCut(law, rig, share * target));
  // ln of how much deeper, or less deep, than expected a shop may cut before the travel ends.
  const toQuickest = slope * (Math.min(...energies) - low);
  const toSlowest = slope * (high - Math.max(...energies));
  const { shallower, deeper } = rowReach(task, way, target, common);
  let share = probability(-(toQuickest + deeper) / spread) + probability(-(toSlowest + shallower) / spread);
  let quick = probability(-toQuickest / spread);
  if (runIn) {
    const least = cutAtQuickest(law, rig);
    const begun = RUN_IN_SHARE * target;
    // Deepened at the quickest, the run-in must not become too deep.
    const room = Math.log((most * (1 - OUT_OF_REACH / 2)) / (begun + least));
    share = Math.max(share, probability(-room / spread));
    quick = Math.max(quick, probability(-Math.log(Math.max(1e-9, target / (begun + least))) / spread));
  }
  return { share, quick };
}

/** Chance, about, that the width at the surface of tracks this deep lies in its band. */
export function widthForecast(task: ForecastTask, depth: number): number {
  const { rig, demand, passWidth, widthSd } = task;
  const { tracks, spacing } = rig.pattern;
  const width = (extra: number): number =>
    2 * halfWidthAt((passWidth + extra) / 2, depth) + (tracks - 1) * spacing;
  const at = (bound: number): number => {
    // The width rises nearly straight with the pass's own.
    const slope = Math.max(1e-6, (width(widthSd) - width(-Math.min(widthSd, passWidth / 2))) / (2 * widthSd));
    return (bound - width(0)) / (slope * widthSd);
  };
  return normalProbability(at(demand.width.most)) - normalProbability(at(demand.width.least));
}

/** Standard deviation, in ln, of what a pass set by a reading cuts at one place: what is left of the doubt in common, and its own [-]. */
export function spreadOf(task: ForecastTask, way: TableTask['way']): number {
  const doubt = variances(task, way, Math.sqrt(task.required * task.most));
  const { pass, seam } = task.law.levels;
  return Math.sqrt(doubt.family + doubt.job + pass ** 2 + seam ** 2);
}

/** Where the doubt about the finished depth at one place comes from, as shares of the variance of its logarithm. */
export function doubtOf(task: ForecastTask, way: TableTask['way'], target: number): Doubt {
  const parts = variances(task, way, target);
  const sum = parts.family + parts.job + parts.pass + parts.seam + parts.gauge;
  return {
    family: parts.family / sum,
    job: parts.job / sum,
    pass: parts.pass / sum,
    seam: parts.seam / sum,
    gauge: parts.gauge / sum,
  };
}

/**
 * Variance of the finished ln depth by where it comes from. A reading pulls what is believed by a gain: the rest of
 * the family's and the job's doubt stays, and the reading's own errors come in.
 */
function variances(task: ForecastTask, way: TableTask['way'], target: number): Doubt {
  const { law, rig, passLength, readingSd } = task;
  const { job, pass, seam } = law.levels;
  const { tryout, shares, stops, stations } = way;
  const energy = heldEnergy(rig, energyForCut(law, rig, Math.max(...shares) * target));
  const family = commonCovariance(law, energy, energy, rig.angleTerm) - job ** 2;
  let left = { family, job: job ** 2, pass: 0, seam: 0, gauge: 0 };
  const learn = (error: { pass: number; seam: number; gauge: number }): void => {
    const common = left.family + left.job + left.pass + left.seam + left.gauge;
    const gain = common / (common + error.pass + error.seam + error.gauge);
    const stays = (1 - gain) ** 2;
    left = {
      family: stays * left.family,
      job: stays * left.job,
      pass: stays * left.pass + gain ** 2 * error.pass,
      seam: stays * left.seam + gain ** 2 * error.seam,
      gauge: stays * left.gauge + gain ** 2 * error.gauge,
    };
  };
  if (tryout !== undefined) {
    const depth = (tryout.kind === 'run_in' ? RUN_IN_SHARE : Math.max(...shares)) * target;
    learn({
      pass: pass ** 2,
      seam: seam ** 2 * stationVariance(tryout.length, tryout.stations, law.seamRange),
      gauge: (readingSd / depth) ** 2 / tryout.stations,
    });
  }
  const own = courseWeight(shares) ** 2;
  if (stops === 0) {
    return { ...left, pass: left.pass + pass ** 2 * own, seam: left.seam + seam ** 2 * own };
  }
  // After the last stop the floor is known as well as it was read, and only the last cut is in doubt.
  const last = shares.at(-1)!;
  const before = 1 - last;
  const reading = {
    seam: seam ** 2 * stationVariance(passLength, stations, law.seamRange),
    gauge: (readingSd / (before * target)) ** 2 / stations,
  };
  learn({ pass: pass ** 2, ...reading });
  const part = last ** 2;
  return {
    family: part * left.family,
    job: part * left.job,
    pass: part * (left.pass + pass ** 2),
    seam: part * left.seam + before ** 2 * reading.seam + seam ** 2 * own,
    gauge: part * left.gauge + before ** 2 * reading.gauge,
  };
}
