import { afterCostOf } from '../../cost/index.ts';
import { hazardLimits } from '../../hazard/index.ts';
import { arcReachLimit, backFaceEasing, heatLimits } from '../../heat/index.ts';
import type { Job, ReadJob } from '../../job/index.ts';
import { kitLimits, type ReadKit } from '../../kit/index.ts';
import type { Knowledge } from '../../learn/index.ts';
import { type Metal, metalOf, thermalOf } from '../../material/index.ts';
import { type PlanOutcome, type PlanResult, type PlanWithin, planAlone, planJob } from '../../plan/index.ts';
import { processEasings, processLimits, type RemovalBelief } from '../../removal/index.ts';
import { type Answer, type SupplyOutcome, statePlan, stateSupply } from '../../result/index.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';
import { answerSupply } from '../supply/answer-supply.ts';
import { planWithKit } from './kit-plans.ts';
import { kitRefusal } from './kit-refusal.ts';

/** Cautions that belong to every use of the process; local codes and licensed practice govern. */
const CAUTIONS: readonly string[] = [
  'Local codes, the welding procedure and licensed practice govern; this program signs nothing and permits nothing.',
  'Arc, noise and spray: welding filter by current, ear protection, leather, closed collar, screens for others nearby.',
  'Fire: molten metal is blown far along the jet. Clear the zone and keep the watch that your hot-work permit asks for.',
  'Fume: extract at the source and keep out of the plume; coated or high-alloy metal and closed spaces need more.',
  'Shock: dry gloves, sound insulation, work lead on bare metal; switch off before touching electrode or leads.',
  'Compressed air: hoses secured, jet never towards a person; drain and check pressure while flowing.',
  'People with an implanted medical device stay away from leads and arc unless cleared in person.',
];

/** What a job is answered from. */
export interface JobQuestion {
  /** The job as read, from `readJob`. */
  readonly job: ReadJob;
  /** Version of the program, written into the result. */
  readonly version: string;
  /** The shop's kit as read, whose margins the plan then keeps. */
  readonly kit?: ReadKit | undefined;
  /** What the shop has learned; the published rows alone where it is left out. */
  readonly knowledge?: Knowledge | undefined;
}

/**
 * Answers a job: composes material, removal, limits and planner into the whole result. The only door for
 * command line, server and app.
 *
 * @param question - job, version of the program, kit, knowledge and units [record], each as read
 * @returns inputs, plan or refusal, alternatives and cautions [record]
 * @source none: composition
 * @example
 * answerJob({ job: demoJob, version: '0' }).inputs.seed // => 1
 */
export function answerJob({ job: read, version, kit, knowledge }: JobQuestion): Answer {
  const { job } = read;
  const metal = metalOf(job.plate.material, job.plate.composition);
  const posterior = beliefOfJob(job, knowledge);
  const within = withinOf(job, posterior);
  const { result, supply } =
    kit === undefined
      ? { result: planJob(job, posterior, within), supply: undefined }
      : answerWithKit(job, posterior, within, kit);
  const told = supply && stateSupply(supply);
  return {
    inputs: {
      revision: read.revision,
      ...(kit !== undefined && { kit_revision: kit.revision }),
      program_version: version,
      seed: job.plan.seed,
      posterior_id: posterior.id,
      knowledge: posterior.knowledge,
      defaults_used: read.defaultsUsed,
    },
    ...('plan' in result && { plan: statePlan(result.plan) }),
    ...('refusal' in result && { refusal: result.refusal }),
    alternatives: 'plan' in result ? result.alternatives.map(statePlan) : [],
    ...(told !== undefined && { supply: told }),
    advice: [
      { topic: 'Polarity', ...metal.polarity },
      { topic: 'Electrode type', ...metal.electrodeType },
    ],
    cautions: [...(told?.cautions ?? []), ...posterior.remarks, ...jobCautions(job, metal), ...CAUTIONS],
    ...('plan' in result && {
      basis: { plan: result.plan, torchFlow: supply?.setting?.air?.point.torchFlow },
    }),
  };
}

/**
 * Plans a job within a kit and nothing beside: neither what the process alone would allow nor a report on the supply.
 *
 * @param read - the job as read [record], from `readJob`
 * @param kit - the shop's kit as read [record], from `readKit`, or left out
 * @param knowledge - what the shop knows of removal [record], or left out
 * @returns the plan; undefined where none is found [record]
 * @source none: composition
 * @example
 * planOnly(demoJob).currency // => "EUR"
 */
export function planOnly({ job }: ReadJob, kit?: ReadKit, knowledge?: Knowledge): PlanOutcome | undefined {
  const posterior = beliefOfJob(job, knowledge);
  const within = withinOf(job, posterior);
  const ofKit = kit === undefined ? [] : kitLimits(kit.kit).functions;
  return planAlone(job, posterior, { ...within, limits: [...within.limits, ...ofKit] });
}

/** What holds whatever kit carries the plan, what eases it, and the money beside the arc. */
function withinOf(job: Job, { meltingEnergy }: RemovalBelief): PlanWithin {
  const metal = thermalOf(job.plate.material);
  return {
    limits: [
      processLimits(meltingEnergy),
      hazardLimits(),
      arcReachLimit(metal, meltingEnergy),
      // only a job that says what its back face stands has it worked out
      ...(job.heat.back_face_most === undefined ? [] : [heatLimits(metal, meltingEnergy)]),
    ],
    easings: [...processEasings(job), backFaceEasing(job)],
    afterCost: afterCostOf(job),
  };
}

/** The plan that the kit carries, or the refusal with what the kit lacks, and the report on its supply. */
function answerWithKit(
  job: Job,
  posterior: RemovalBelief,
  within: PlanWithin,
  read: ReadKit,
): { readonly result: PlanResult | Required<Pick<Answer, 'refusal'>>; readonly supply: SupplyOutcome } {
  const limits = kitLimits(read.kit);
  const plans = planWithKit(job, posterior, within, limits);
  const supply = answerSupply({ read, job, posterior, limits, plans });
  if ('plan' in plans.result) return { result: plans.result, supply };
  return { result: { refusal: kitRefusal(plans.result.refusal, supply) }, supply };
}

function jobCautions(job: Job, metal: Metal): string[] {
  const cautions = metal.cautions.map((caution) => caution.text);
  if (job.groove.ligament_least < 3e-3) {
    cautions.unshift(
      'The ligament asked for is thin: a blow-through throws melt out of the far side. Keep it clear of people and fuel.',
    );
  }
  return cautions;
}
