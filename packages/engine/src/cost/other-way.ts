import type { Job } from '../job/index.ts';
import type { Source } from '../limit/index.ts';
import { fromUnit } from '../quantity/index.ts';
import { moneyOf } from './after-cost.ts';
import { afterWork } from './after-work.ts';
import { type ArcWork, arcSteps } from './arc-work.ts';
import type { StepWork } from './cycle-step.ts';
import type { CostPractice } from './practice.ts';
import { USUAL_FACTORS } from './work-factors.ts';

/** Other ways to make a groove, in the order in which they are told. */
export const OTHER_WAYS = ['manual_gouging', 'grinding', 'chipping', 'machining'] as const;

/** A way to make a groove without the carriage. */
export type OtherWay = (typeof OTHER_WAYS)[number];

/** What another way takes for the whole job, at the usual durations. */
export interface WayTaken {
  /** Time that making the groove takes [s]. */
  readonly grooveTime: number;
  /** Time of the whole job [s]. */
  readonly time: number;
  /** Money of the whole job, in the job's currency [-]. */
  readonly cost: number;
  /** What of the money does not grow with the seam, in the job's currency [-]. */
  readonly fixedCost: number;
}

/** Money of a way, by whether it grows with the seam. */
export interface WayCost {
  /** What does not grow with the seam, in the job's currency [-]. */
  readonly fixed: number;
  /** What each metre costs [1/m]. */
  readonly perMetre: number;
}

/** Another way, with where its rate comes from. */
export interface ComparedWay {
  readonly way: OtherWay;
  /** Where the rate comes from: stated by the job, or not. */
  readonly rate: 'stated' | 'assumed' | 'missing';
  /** What it rests on, in words. */
  readonly note: string;
  readonly source: Source;
  /** What it takes; undefined where no rate is known. */
  readonly taken: WayTaken | undefined;
}

/** Arc on, of the time of a manual gouger: figure of manual welding, taken over (CST-020). */
const MANUAL_ARC_ON = 0.3;
/** Milling-type tool over manual gouging with grinding, in metres per hour (CST-033). */
const MILLING_GAIN = 2.5;

/** Ways whose tools are carried to the seam: without a stated set-up none is counted, for the others that of the job. */
const BY_HAND: ReadonlySet<OtherWay> = new Set(['grinding', 'chipping']);

const JOB: Source = { text: 'the rate that the job states', provenance: 'job file' };

/**
 * What the other ways take for the same groove, all work after it included.
 *
 * Time from the job's rate by length, else by volume, else from a marked assumption: manual gouging as the planned
 * arc with 30 % of the time burning, grinding at the job's own grinding rate, machining 2.5 times as quick as manual
 * gouging with grinding; for chipping there is none. Set-up, where not stated, is the job's for gouging by hand and
 * machining, none for grinding and chipping. A groove made cold has no carburised skin to grind off.
 *
 * @param job - the job, for its rates [record], from `readJob`
 * @param work - the plan as cost sees it [record], its medians > 0
 * @param practice - rates and paces [record], from `costPracticeOf`
 * @returns every way, compared where a rate is known [list]
 * @source CST-020, CST-033 (confirmed), CST-003 for what to do with them (derived)
 * @example
 * const work = arcWorkOfPlan(demoAnswer.basis.plan, demoJob.job, { airFlow: undefined, coolingTime: 60, hirePerDay: 0 });
 * compareWays(demoJob.job, work, costPracticeOf(demoJob.job)).map(({ way }) => way) // => ["manual_gouging", "grinding", "chipping", "machining"]
 */
export function compareWays(job: Job, work: ArcWork, practice: CostPractice): readonly ComparedWay[] {
  const volume = work.section.areaPerLength * work.section.seamLength;
  const manual = work.arcTime.p50 / MANUAL_ARC_ON;
  const grinding = volume / practice.grindingRate;
  const skin = stepsAfter(work, practice, true).find(({ step }) => step === 'grinding')?.time ?? 0;
  const assumed: Readonly<Record<OtherWay, { time: number; note: string; source: Source } | undefined>> = {
    manual_gouging: {
      time: manual,
      note: 'the planned arc time, with the arc burning 30 % of the gouger’s time, and the job’s set-up',
      source: {
        text: 'Handbook of Structural Steel Connection Design and Details, p. 246: manual electrode welding, taken over for gouging',
        provenance: 'common practice',
      },
    },
    grinding: {
      time: grinding,
      note: 'the whole groove at the job’s own grinding rate',
      source: { text: 'the grinding rate of the job or its default', provenance: 'derived' },
    },
    chipping: undefined,
    machining: {
      time: (manual + skin) / MILLING_GAIN,
      note: '2.5 times as quick as manual gouging with grinding, where a cutter can be brought to the seam, and the job’s set-up',
      source: {
        text: 'ratio from a shipyard trial of a milling-type back-gouging tool, report of September 2010 (naval hulls), on the assumed time by hand',
        provenance: 'common practice',
      },
    },
  };
  return OTHER_WAYS.map((way): ComparedWay => {
    const own = job.after.alternatives[way];
    const stated =
      own.groove_m_per_h !== undefined
        ? work.section.seamLength / fromUnit(own.groove_m_per_h, 'm/h')
        : own.removal_cm3_per_min !== undefined
          ? volume / fromUnit(own.removal_cm3_per_min, 'cm3/min')
          : undefined;
    const time = stated ?? assumed[way]?.time;
    if (time === undefined) {
      return {
        way,
        rate: 'missing',
        note: 'no rate is stated and none is known that could stand in, so it is not compared',
        source: { text: 'not covered by the source', provenance: 'derived' },
        taken: undefined,
      };
    }
    return {
      way,
      rate: stated === undefined ? 'assumed' : 'stated',
      note:
        stated === undefined
          ? assumed[way]!.note
          : own.groove_m_per_h === undefined
            ? 'the removal that the job states, over the planned section'
            : 'the pace that the job states',
      source: stated === undefined ? assumed[way]!.source : JOB,
      taken: takenBy(way, time, own, work, practice),
    };
  });
}

/**
 * What the planned way takes for the whole job at its medians and the usual durations, to be held against others.
 *
 * @param work - the plan as cost sees it [record], its medians > 0
 * @param practice - rates and paces [record], from `costPracticeOf`
 * @returns time and money [record]
 * @source CST-001, CST-002 (derived)
 * @example
 * const work = arcWorkOfPlan(demoAnswer.basis.plan, demoJob.job, { airFlow: undefined, coolingTime: 60, hirePerDay: 0 });
 * plannedWay(work, costPracticeOf(demoJob.job)).fixedCost // => 73.666...
 */
export function plannedWay(work: ArcWork, practice: CostPractice): WayTaken {
  const draw = { arcTime: work.arcTime.p50, electrodes: work.electrodes.p50, rework: false };
  const arc = arcSteps(work, draw, practice, USUAL_FACTORS);
  const before = arc.filter(({ step }) => step === 'set_up' || step === 'commissioning');
  const steps = [...arc, ...stepsAfter(work, practice, true)];
  const time = totalTime(steps);
  const hire = Math.ceil(time / work.shift) * work.hirePerDay;
  return {
    grooveTime: totalTime(arc) - totalTime(before),
    time,
    cost: totalMoney(steps) + hire,
    fixedCost: totalMoney(before) + hire,
  };
}

/**
 * Length of seam from which on the way with the dearer set-up is the cheaper one.
 *
 * L = (F1 - F2) / (c2 - c1) with the money F that does not grow with the seam and c for each metre.
 *
 * @param dear - the way with the dearer set-up: money for set-up and for a metre [record], each >= 0
 * @param cheap - the other way [record], each >= 0
 * @returns the length [m]; null where the first is never cheaper, 0 where it always is
 * @source CST-003: algebra (derived)
 * @example
 * breakEvenLength({ fixed: 120, perMetre: 12 }, { fixed: 20, perMetre: 18 }) // => 16.66666667
 * breakEvenLength({ fixed: 120, perMetre: 18 }, { fixed: 20, perMetre: 12 }) // => null
 */
export function breakEvenLength(dear: WayCost, cheap: WayCost): number | null {
  const saving = cheap.perMetre - dear.perMetre;
  const more = dear.fixed - cheap.fixed;
  if (more <= 0 && saving >= 0) return 0;
  return saving > 0 ? more / saving : null;
}

function totalTime(steps: readonly StepWork[]): number {
  return steps.reduce((sum, step) => sum + step.time, 0);
}

function totalMoney(steps: readonly StepWork[]): number {
  return steps.reduce((sum, step) => sum + moneyOf(step), 0);
}

function takenBy(
  way: OtherWay,
  grooveTime: number,
  own: Job['after']['alternatives'][OtherWay],
  work: ArcWork,
  practice: CostPractice,
): WayTaken {
  const crew = own.crew_per_hour === undefined ? practice.crew : own.crew_per_hour / 3600;
  const setUp = own.set_up_time ?? (BY_HAND.has(way) ? 0 : work.setUpTime);
  const after = stepsAfter(work, practice, way === 'manual_gouging');
  const fixedCost = setUp * crew;
  return {
    grooveTime,
    time: setUp + grooveTime + totalTime(after),
    cost:
      fixedCost +
      grooveTime * crew +
      (own.consumables_per_m ?? 0) * work.section.seamLength +
      totalMoney(after),
    fixedCost,
  };
}

/** What comes after the groove; a groove made cold has no skin to take off. */
function stepsAfter(work: ArcWork, practice: CostPractice, skin: boolean): readonly StepWork[] {
  return afterWork(work.section, skin ? practice : { ...practice, skinAllowance: 0 }, USUAL_FACTORS);
}
