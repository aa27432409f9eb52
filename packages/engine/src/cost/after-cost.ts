import type { Job } from '../job/index.ts';
import { areasOf, workOnAreas } from './after-work.ts';
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
  const start: AfterCost = { cost: before * practice.crew, time: before };
  const at = (cut: number, ground: number, seamLength: number): AfterCost =>
    workOnAreas({ cut, ground }, seamLength, practice, USUAL_FACTORS).reduce(
      ({ cost, time }, step) => ({ cost: cost + moneyOf(step), time: time + step.time }),
      start,
    );
  // Each step goes by the length of the seam and by two volumes, in proportion: three looks at one metre tell all grooves.
  const seam = less(at(0, 0, 1), start);
  const cut = less(at(1, 0, 1), at(0, 0, 1));
  const ground = less(at(0, 1, 1), at(0, 0, 1));
  return (section) => {
    const { seamLength } = section;
    const areas = areasOf(section, practice);
    const sum = (key: keyof AfterCost): number =>
      start[key] + seamLength * (seam[key] + areas.cut * cut[key] + areas.ground * ground[key]);
    return { cost: sum('cost'), time: sum('time') };
  };
}

function less(more: AfterCost, start: AfterCost): AfterCost {
  return { cost: more.cost - start.cost, time: more.time - start.time };
}

/** All money of a step, in the job's currency. */
export function moneyOf({ money }: StepWork): number {
  let sum = 0;
  for (const part in money) sum += money[part as keyof typeof money]!;
  return sum;
}
