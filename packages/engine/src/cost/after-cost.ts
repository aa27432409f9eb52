import type { Job } from '../job/index.ts';
import { afterWork } from './after-work.ts';
import type { StepWork } from './cycle-step.ts';
import type { GrooveSection } from './groove-section.ts';
import { costPracticeOf } from './practice.ts';
import { USUAL_FACTORS } from './work-factors.ts';

/** Money and time beside the arc. */
export interface AfterCost {
  /** Money, in the job's currency [-]. */
  readonly cost: number;
  /** Time [s]. */
  readonly time: number;
}

/**
 * Prepares what a groove costs beside its arc: set-up, commissioning, cleaning, grinding, inspection and refill.
 *
 * What comes back is cheap and pure: closed forms at the usual durations, so that a planner can weigh every
 * candidate by the whole job. Deeper and wider grooves never cost less.
 *
 * @param job - the job [record], from `readJob`
 * @returns what gives cost and time of a section [record]
 * @source CST-002, CST-060 (derived)
 * @example
 * afterCostOf(demoJob.job)({ areaPerLength: 1e-4, topWidth: 0.012, depth: 0.01, seamLength: 1 }).time // => 8230.194...
 */
export function afterCostOf(job: Job): (section: GrooveSection) => AfterCost {
  const practice = costPracticeOf(job);
  const before = job.after.set_up_time + job.after.commissioning_time;
  return (section) => {
    let [cost, time] = [before * practice.crew, before];
    for (const step of afterWork(section, practice, USUAL_FACTORS)) {
      cost += moneyOf(step);
      time += step.time;
    }
    return { cost, time };
  };
}

/** All money of a step, in the job's currency. */
export function moneyOf({ money }: StepWork): number {
  let sum = 0;
  for (const part in money) sum += money[part as keyof typeof money]!;
  return sum;
}
