import { metalOf } from '../material/index.ts';
import { mixtureProbability } from '../numeric/index.ts';
import {
  depthCeiling,
  depthRegressors,
  lnDepthParts,
  PASS_DEPTH_MOST,
  type PassSetting,
  type Prediction,
  predictDepth,
  predictWidth,
  seamCorrelation,
} from '../removal/index.ts';
import { partsOf } from './effects.ts';
import { beliefOfFamily, lawCovariance } from './knowledge.ts';
import { type Family, sizeBand } from './observation.ts';
import type { Knowledge } from './shop-knowledge.ts';

/** A job at hand, for which a trial is to teach something. */
export interface JobAhead {
  readonly family: Family;
  /** Energy to heat and melt a unit volume of the metal [J/m3]. */
  readonly meltingEnergy: number;
  /** How its first pass is planned. */
  readonly setting: PassSetting;
}

/** An electrode in stock with the currents that source and electrode allow. */
export interface TrialElectrode {
  /** Diameter [m]. */
  readonly diameter: number;
  readonly kind: Family['electrode'];
  /** Least current [A]. */
  readonly least: number;
  /** Greatest current [A]. */
  readonly most: number;
}

/** What a trial may be cut with, and what it takes. */
export interface TrialWindow {
  readonly electrodes: readonly TrialElectrode[];
  /** Travel that the carriage keeps. */
  readonly travel: {
    /** Least [m/s]. */
    readonly least: number;
    /** Greatest [m/s]. */
    readonly most: number;
  };
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Push angle [rad]. */
  readonly pushAngle: number;
  /** Length of the cut [m]. */
  readonly length: number;
  /** Readings that the crew takes at most [-]. */
  readonly stationsMost: number;
  /** Standard deviation of one reading [m]. */
  readonly gaugeSd: number;
  readonly times: {
    /** To lay the plate out and take it away [s]. */
    readonly layOut: number;
    /** To start [s]. */
    readonly start: number;
    /** For one reading [s]. */
    readonly gauge: number;
  };
}

/** A trial, and what it is expected to teach. */
export interface NextTrial {
  readonly family: Family;
  readonly setting: PassSetting;
  /** Length of the cut [m]. */
  readonly length: number;
  /** Places to gauge, spread evenly [-]. */
  readonly stations: number;
  readonly depth: Prediction;
  /** Time that it takes, laying out and gauging included [s]. */
  readonly time: number;
  /** Standard deviation of ln depth that is not known of the jobs at hand. */
  readonly doubt: {
    /** Before the trial [-]. */
    readonly before: number;
    /** After it, on the mean [-]. */
    readonly after: number;
  };
  /** Chance that it comes out deeper than one pass may be: 1.5 diameters, or what the arc's power can melt [-]. */
  readonly leavesWindow: number;
}

/** Chance of leaving the window that is put up with, as long as some setting stays below it [-] (judgement). */
const LEAVES_MOST = 0.1;
const CURRENTS = 3;
const TRAVELS = 9;

/**
 * The trial that teaches most per minute for the jobs at hand: settings of the window tried one by one.
 *
 * What it teaches is how much of the variance of the jobs' predicted ln depth it takes away, on the mean over the jobs.
 * It says how likely a setting leaves the window, and never that it is safe.
 *
 * @param knowledge - what the shop knows [record], from `learnFrom`
 * @param jobs - the jobs at hand [list], at least one
 * @param window - what a trial may be cut with [record], electrodes and ranges not empty
 * @returns the trial [record]
 * @source derived: expected reduction of variance in a linear Gaussian model; a chance, no guarantee (arXiv 2403.12948, memory)
 * @example
 * const nothing = learnFrom({ shop: 'yard', id: 'x', observations: [] });
 * const family = { metal: 'carbon_steel', position: 'flat', electrode: 'jointed', band: 'middle' };
 * const setting = { diameter: 0.0127, current: 900, voltage: 42, travel: 0.012, pushAngle: Math.PI / 4 };
 * const times = { layOut: 300, start: 60, gauge: 30 };
 * const window = { electrodes: [{ diameter: 0.0127, kind: 'jointed', least: 800, most: 1000 }], travel: { least: 0.008, most: 0.02 }, voltage: 42, pushAngle: Math.PI / 4, length: 0.3, stationsMost: 3, gaugeSd: 0.0003, times };
 * nextTrial(nothing, [{ family, meltingEnergy: 1.05e10, setting }], window).doubt // => { before: 0.3350..., after: 0.1391... }
 */
export function nextTrial(knowledge: Knowledge, jobs: readonly JobAhead[], window: TrialWindow): NextTrial {
  const tried = worksOf(jobs).flatMap(({ family: work, meltingEnergy }) =>
    settingsOf(window).flatMap(({ setting, kind }) => {
      const family: Family = { ...work, electrode: kind, band: sizeBand(setting.diameter) };
      return stationCounts(window.stationsMost).map((stations) =>
        trialOf(knowledge, jobs, window, { family, setting, stations, meltingEnergy }),
      );
    }),
  );
  const inside = tried.filter(({ leavesWindow }) => leavesWindow <= LEAVES_MOST);
  const worth = ({ doubt, time }: NextTrial): number => (doubt.before ** 2 - doubt.after ** 2) / time;
  if (inside.length > 0) return inside.reduce((best, each) => (worth(each) > worth(best) ? each : best));
  return tried.reduce((best, each) => (each.leavesWindow < best.leavesWindow ? each : best));
}

/** One job to each metal, position and torch among the jobs: a trial is cut in one of them. */
function worksOf(jobs: readonly JobAhead[]): readonly JobAhead[] {
  const key = ({ family: { metal, position, torch } }: JobAhead): string => `${metal}/${position}/${torch}`;
  return jobs.filter((job, index) => jobs.findIndex((other) => key(other) === key(job)) === index);
}

/** Settings over the window: currents evenly, travels by ratios. */
function settingsOf({ electrodes, travel, voltage, pushAngle }: TrialWindow) {
  return electrodes.flatMap(({ diameter, kind, least, most }) => {
    return Array.from({ length: CURRENTS }, (_, i) => least + ((most - least) * i) / (CURRENTS - 1)).flatMap(
      (current) =>
        Array.from({ length: TRAVELS }, (_, k) => ({
          kind,
          setting: {
            diameter,
            current,
            voltage,
            travel: travel.least * (travel.most / travel.least) ** (k / (TRAVELS - 1)),
            pushAngle,
          },
        })),
    );
  });
}

function stationCounts(most: number): readonly number[] {
  return [1, 3, most].filter((count, index, all) => count <= most && all.indexOf(count) === index);
}

interface Tried {
  readonly family: Family;
  readonly setting: PassSetting;
  readonly stations: number;
  readonly meltingEnergy: number;
}

function trialOf(
  knowledge: Knowledge,
  jobs: readonly JobAhead[],
  { length, gaugeSd, times }: TrialWindow,
  { family, setting, stations, meltingEnergy }: Tried,
): NextTrial {
  const belief = beliefOfFamily(knowledge, metalOf(family.metal), family);
  const ceiling = depthCeiling(setting, predictWidth(belief, setting.diameter).p50, meltingEnergy);
  const deepest = Math.min(PASS_DEPTH_MOST * setting.diameter, ceiling);
  const inside = mixtureProbability(lnDepthParts(belief, setting), Math.log(deepest / setting.diameter));
  const depth = predictDepth(belief, setting);
  const own = { parts: partsOf(family, knowledge.shop), x: depthRegressors(setting, meltingEnergy) };
  let [before, after] = [0, 0];
  for (const node of knowledge.depth.learned.nodes) {
    const { job, pass, seam } = node.sds;
    const noise =
      job ** 2 +
      pass ** 2 +
      seam ** 2 * evenness(length, stations, belief.seamRange) +
      (gaugeSd / depth.p50) ** 2 / stations;
    const spread = lawCovariance(knowledge.depth, node, own, own) + noise;
    for (const ahead of jobs) {
      const of = {
        parts: partsOf(ahead.family, knowledge.shop),
        x: depthRegressors(ahead.setting, ahead.meltingEnergy),
      };
      const now = lawCovariance(knowledge.depth, node, of, of);
      before += node.weight * now;
      after += node.weight * (now - lawCovariance(knowledge.depth, node, of, own) ** 2 / spread);
    }
  }
  return {
    family,
    setting,
    length,
    stations,
    depth,
    time: times.layOut + times.start + length / setting.travel + stations * times.gauge,
    doubt: { before: Math.sqrt(before / jobs.length), after: Math.sqrt(after / jobs.length) },
    leavesWindow: 1 - inside,
  };
}

/** Variance of the mean of the seam process over stations spread evenly, in that of one station. */
function evenness(length: number, stations: number, range: number): number {
  let sum = 0;
  for (let i = 0; i < stations; i += 1) {
    for (let k = 0; k < stations; k += 1) sum += seamCorrelation(((i - k) * length) / stations, range);
  }
  return sum / stations ** 2;
}
