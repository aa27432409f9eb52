import { costPracticeOf, skinOff } from '../../cost/index.ts';
import { faceHeat, gougingStart, heatOfPlan, keptHeat, type StationPass } from '../../heat/index.ts';
import type { Job, ReadJob } from '../../job/index.ts';
import type { Knowledge } from '../../learn/index.ts';
import { thermalOf } from '../../material/index.ts';
import { type PlanOutcome, sectionOfPlan, stationCuts } from '../../plan/index.ts';
import { predictWidth, type RemovalBelief } from '../../removal/index.ts';
import { type Answer, stateHeat } from '../../result/index.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';
import type { HeatAnswer } from './heat-answer.ts';

/** Which look at the heat is wanted. */
export interface HeatQuestion {
  /** Place of the section from the start of the seam; the middle when left out [m]. */
  readonly station?: number | undefined;
  readonly quality: 'quick' | 'refined';
  /** What the shop has learned, as it was planned with. */
  readonly knowledge?: Knowledge | undefined;
}

/**
 * Follows the heat of a plan at one place of the seam: fields, peaks, cooling times, hardness, preheat, skin.
 *
 * A generator that yields the share done, so that a worker can stream and cancel it; its result is the report with
 * the field of the middle share of heat kept, or null for an answer without a plan.
 *
 * @param read - the job as read [record], from `readJob`
 * @param answer - the answer to it [record], from `answerJob`
 * @param question - station and quality [record], station from 0 to the length of the seam
 * @returns a generator of the share done, from 0 to 1, whose result is the heat answer or null [record]
 * @source none: composition
 * @example
 * answerHeat({ job: {} }, { refusal: {} }, { quality: 'quick' }).next().value // => null
 */
export function* answerHeat(
  { job }: ReadJob,
  { basis }: Answer,
  { station, quality, knowledge }: HeatQuestion,
): Generator<number, HeatAnswer | null> {
  if (basis === undefined) return null;
  const { plan } = basis;
  const metal = thermalOf(job.plate.material);
  const start = gougingStart(job);
  const belief = beliefOfJob(job, knowledge);
  const { outcome, field } = yield* heatOfPlan({
    job,
    metal,
    start,
    station: Math.min(job.seam.length, Math.max(0, station ?? job.seam.length / 2)),
    quality,
    passesAt: (place) => passesAt(place, job, plan, belief, faceHeat(metal, start.temperature)),
    planned: plan.passes.length,
    skin: skinOff(sectionOfPlan(plan, job), costPracticeOf(job)),
  });
  return { report: stateHeat(outcome), field };
}

/** The passes as the plate feels them at a place of the seam, in the median course of the plan. */
function passesAt(
  station: number,
  job: Job,
  plan: PlanOutcome,
  belief: RemovalBelief,
  face: number,
): readonly StationPass[] {
  const passWidth = predictWidth(belief, plan.electrode.diameter).p50;
  const stated = { least: job.heat.kept_least, most: job.heat.kept_most };
  return stationCuts({ job, plan, passWidth, station }).map(({ pass, area, face: cut, ...course }) => {
    const { number, current, voltage, travel } = pass;
    const energy = { current, voltage, travel, area, face: cut, duration: course.duration };
    return {
      ...course,
      number,
      travel,
      heat: keptHeat(energy, { energy: belief.meltingEnergy, face }, stated),
    };
  });
}
