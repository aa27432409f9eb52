import type { Job } from '../job/index.ts';
import { type DrawStream, normalQuantile } from '../numeric/index.ts';
import { moneyOf } from './after-cost.ts';
import { afterWork } from './after-work.ts';
import { type ArcDraw, type ArcWork, arcSteps, type Scatter, type Typical } from './arc-work.ts';
import { COST_PARTS, type CostPart, CYCLE_STEPS, type CycleStep, type StepWork } from './cycle-step.ts';
import { type Estimate, estimateOf } from './estimate.ts';
import { type GrooveSection, plainGrooveArea } from './groove-section.ts';
import type { CostPractice } from './practice.ts';
import { simulate } from './simulate.ts';
import { drawFactors } from './work-factors.ts';

/** Trials of one cycle [-]. */
const TRIALS = 10_000;
/** Steps for which what gouges stands there; cleaning, grinding and refill do not need it. */
const HIRED: ReadonlySet<CycleStep> = new Set<CycleStep>([
  'set_up',
  'commissioning',
  'starts',
  'arc',
  'returns',
  'electrode_changes',
  'gauging',
  'cooling',
  'rework',
]);
/** Normal deviate of the 90th and of the 95th percentile [-]. */
const Z90 = 1.281551566;
const Z95 = 1.644853627;

/** What a step or a part comes to over all trials. */
export interface CycleShare {
  readonly estimate: Estimate;
  /** Its mean over the mean of the whole [-]. */
  readonly share: number;
}

/** The whole cycle of a job, simulated. */
export interface Cycle {
  /** Trials run [-]. */
  readonly trials: number;
  /** Seed of the draws [-]. */
  readonly seed: number;
  /** Time of everything, one after the other [s]. */
  readonly time: Estimate;
  /** Money, in the job's currency [-]. */
  readonly cost: Estimate;
  /** Time by step [s]. */
  readonly timeOf: Readonly<Record<CycleStep, CycleShare>>;
  /** Money by step, in the job's currency [-]. */
  readonly costOf: Readonly<Record<CycleStep, CycleShare>>;
  /** Money by what it is spent on, in the job's currency [-]. */
  readonly partOf: Readonly<Record<CostPart, CycleShare>>;
  /** Share of the trials in which the depth was not reached at first [-]. */
  readonly reworked: number;
}

/**
 * Simulates the whole cycle of a job: time and money of every step, with their scatter.
 *
 * Each trial draws one factor per kind of work (triangular between the job's least and most), the arc time
 * (lognormal through the plan's median and 90th percentile), the electrodes, and depth and width of the groove (two
 * half normals through the plan's percentiles), on which grinding and refill hang. The shallowest trials, as many as
 * the plan's chance of not reaching the depth, are mended. Hired plant counts by whole days from set-up to the last
 * arc of the gouging. The same seed gives the
 * same result, and every trial takes the same draws, so that a changed job is compared trial by trial.
 *
 * @param job - the job, for its spreads [record], from `readJob`
 * @param work - the plan as cost sees it [record], its medians > 0
 * @param practice - rates and paces [record], from `costPracticeOf`
 * @param seed - seed of the draws [-], a whole number from 0 to 2^31 - 1
 * @returns estimates of time and money, by step and by part [record]
 * @source CST-001, CST-002 (derived); JCGM 101:2008 for the method
 * @example
 * const work = arcWorkOfPlan(demoAnswer.basis.plan, demoJob.job, { airFlow: undefined, coolingTime: 60, hirePerDay: 0 });
 * simulateCycle(demoJob.job, work, costPracticeOf(demoJob.job), 1).timeOf.set_up.estimate.mean // => 2970.624...
 */
export function simulateCycle(job: Job, work: ArcWork, practice: CostPractice, seed: number): Cycle {
  const steps = CYCLE_STEPS.length;
  const parts = steps * 2;
  const totals = parts + COST_PARTS.length;
  const samples = simulate(TRIALS, seed, totals + 3, (stream, row) => {
    const { done, time, hire, cost, rework } = drawTrial(job, work, practice, stream);
    for (const step of done) {
      const at = CYCLE_STEPS.indexOf(step.step);
      row[at] = step.time;
      row[steps + at] = moneyOf(step);
      COST_PARTS.forEach((part, index) => {
        row[parts + index]! += step.money[part] ?? 0;
      });
    }
    row[parts + COST_PARTS.indexOf('hire')] = hire;
    // hired plant stands there from the set-up on
    row[steps]! += hire;
    row[totals] = time;
    row[totals + 1] = cost;
    row[totals + 2] = rework ? 1 : 0;
  });
  const time = estimateOf(samples[totals]!);
  const cost = estimateOf(samples[totals + 1]!);
  const shareOf = (column: number, whole: number): CycleShare => {
    const estimate = estimateOf(samples[column]!);
    return { estimate, share: whole === 0 ? 0 : estimate.mean / whole };
  };
  return {
    trials: TRIALS,
    seed,
    time,
    cost,
    timeOf: byName(CYCLE_STEPS, (index) => shareOf(index, time.mean)),
    costOf: byName(CYCLE_STEPS, (index) => shareOf(steps + index, cost.mean)),
    partOf: byName(COST_PARTS, (index) => shareOf(parts + index, cost.mean)),
    reworked: samples[totals + 2]!.reduce((sum, each) => sum + each, 0) / TRIALS,
  };
}

/** Time and money of everything, one after the other. */
export type CycleTotals = Pick<Cycle, 'time' | 'cost'>;

/**
 * Simulates the whole cycle of a job as `simulateCycle` does, trial by trial the same, and tells the whole alone.
 *
 * @param job - the job, for its spreads [record], from `readJob`
 * @param work - the plan as cost sees it [record], its medians > 0
 * @param practice - rates and paces [record], from `costPracticeOf`
 * @param seed - seed of the draws [-], a whole number from 0 to 2^31 - 1
 * @returns estimates of time and money [record]
 * @source as simulateCycle
 * @example
 * const work = arcWorkOfPlan(demoAnswer.basis.plan, demoJob.job, { airFlow: undefined, coolingTime: 60, hirePerDay: 0 });
 * const practice = costPracticeOf(demoJob.job);
 * simulateTotals(demoJob.job, work, practice, 1).time.p50 / simulateCycle(demoJob.job, work, practice, 1).time.p50 // => 1
 */
export function simulateTotals(job: Job, work: ArcWork, practice: CostPractice, seed: number): CycleTotals {
  const samples = simulate(TRIALS, seed, 2, (stream, row) => {
    const { time, cost } = drawTrial(job, work, practice, stream);
    row[0] = time;
    row[1] = cost;
  });
  return { time: estimateOf(samples[0]!), cost: estimateOf(samples[1]!) };
}

/** What one trial comes to. */
interface Trial {
  readonly done: readonly StepWork[];
  /** Time of all steps [s]. */
  readonly time: number;
  /** Hired plant, and all money with it, in the job's currency [-]. */
  readonly hire: number;
  readonly cost: number;
  /** Whether the depth was not reached at first. */
  readonly rework: boolean;
}

function drawTrial(job: Job, work: ArcWork, practice: CostPractice, stream: DrawStream): Trial {
  const factors = drawFactors(job.after.spread, stream);
  const { arc, section } = drawArc(work, stream);
  const done = [...arcSteps(work, arc, practice, factors), ...afterWork(section, practice, factors)];
  let [time, gouging] = [0, 0];
  for (const { step, time: spent } of done) {
    time += spent;
    if (HIRED.has(step)) gouging += spent;
  }
  const hire = Math.ceil(gouging / work.shift) * work.hirePerDay;
  let cost = hire;
  for (const step of done) cost += moneyOf(step);
  return { done, time, hire, cost, rework: arc.rework };
}

/** Draws arc and groove of one trial: four draws, whatever the plan. */
function drawArc(
  work: ArcWork,
  stream: DrawStream,
): { readonly arc: ArcDraw; readonly section: GrooveSection } {
  const slow = stream.normal();
  const wear = stream.normal();
  // the shallowest grooves are those that did not reach their depth
  const reach = stream.uniform();
  const wide = stream.normal();
  const depth = scattered(work.depth, normalQuantile(reach));
  const width = scattered(work.width, wide);
  const { section } = work;
  const grown = plainGrooveArea(width, depth) - plainGrooveArea(work.width.p50, work.depth.p50);
  return {
    arc: {
      arcTime: lognormal(work.arcTime, slow),
      electrodes: Math.max(1, Math.round(lognormal(work.electrodes, wear))),
      rework: reach < 1 - work.depthReached,
    },
    section: {
      ...section,
      areaPerLength: Math.max(0, section.areaPerLength + grown),
      topWidth: width,
      depth,
    },
  };
}

/** The lognormal through a median and a 90th percentile at a normal deviate. */
function lognormal({ p50, p90 }: Typical, deviate: number): number {
  return p90 > p50 && p50 > 0 ? p50 * (p90 / p50) ** (deviate / Z90) : p50;
}

/** Two half normals through three percentiles, at a normal deviate; never below 0. */
function scattered({ p05, p50, p95 }: Scatter, deviate: number): number {
  return Math.max(0, p50 + ((deviate < 0 ? p50 - p05 : p95 - p50) / Z95) * deviate);
}

function byName<Name extends string, Value>(
  names: readonly Name[],
  of: (index: number) => Value,
): Readonly<Record<Name, Value>> {
  return Object.fromEntries(names.map((name, index) => [name, of(index)])) as Record<Name, Value>;
}
