import { type ElectrodeGas, electrodeGas, hazardLimits, judgeHazards } from '../../hazard/index.ts';
import type { Job, ReadJob } from '../../job/index.ts';
import { bayOfJob, hoseBores, noLoadVoltages, type ReadKit } from '../../kit/index.ts';
import type { Limit } from '../../limit/index.ts';
import { metalOf } from '../../material/index.ts';
import { heaviestPass, type PlanOutcome } from '../../plan/index.ts';
import { predictWear, publishedBelief } from '../../removal/index.ts';
import { type Answer, type HazardReport, stateHazard } from '../../result/index.ts';

/**
 * Tells what a job asks of the people around it: noise by crew, shade, fire zone, fume, shock, field, air, space.
 *
 * Values stand beside the figure that a source names, in one of four wordings; what is missing is not covered.
 *
 * @param read - the job as read [record], from `readJob`
 * @param answer - what came of planning it [record], from `answerJob`
 * @param kit - the shop's kit as read [record], from `readKit`, or left out
 * @returns figures, rows, lists and the fire zone [record]
 * @source none: composition; every figure carries its own
 * @example
 * answerHazard(demoJob, demoAnswer, demoKit).setting.push_angle_deg // => 45
 */
export function answerHazard({ job }: ReadJob, { basis }: Answer, kit?: ReadKit): HazardReport {
  const plan = basis?.plan;
  const outcome = judgeHazards({
    job,
    current: plan && Math.max(...plan.passes.map(({ current }) => current)),
    arcTime: plan?.arcTime.p90,
    gas: plan && gasOf(job, plan),
    sources: kit && noLoadVoltages(kit.kit),
    hoseBores: kit && hoseBores(kit.kit),
    baySeam: kit && bayOfJob(kit.kit, job)?.seam,
  });
  return stateHazard(outcome, plan === undefined ? [] : ownLimits(plan, job));
}

/** Gas of the electrode at the greatest current of the plan, by the published rows, whose band is the wider one. */
function gasOf(job: Job, plan: PlanOutcome): ElectrodeGas {
  const { electrode, current } = heaviestPass(plan);
  const belief = publishedBelief(metalOf(job.plate.material), job.seam.position);
  return electrodeGas(predictWear(belief, electrode.diameter, current).p95, electrode.diameter);
}

/** Margins of the hazards as they stand among the plan's limits. */
function ownLimits(plan: PlanOutcome, job: Job): readonly Limit[] {
  const own = new Set(hazardLimits()(heaviestPass(plan), job).map(({ id }) => id));
  return plan.limits.filter(({ id }) => own.has(id));
}
