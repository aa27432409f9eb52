import type { DefaultUsed } from '../document/index.ts';
import type { Job, ReadJob } from '../job/index.ts';
import { type Metal, metalOf } from '../material/index.ts';
import { type Plan, planJob, type Refusal } from '../plan/index.ts';
import { processLimits, publishedPosterior } from '../removal/index.ts';
import type { SupplyReport } from './supply-report.ts';

/** What the result was computed from. */
export interface AnswerInputs {
  /** Content hash of the job as read, defaults included (SHA-256, hex). */
  readonly revision: string;
  readonly program_version: string;
  /** Seed of all random draws [-]. */
  readonly seed: number;
  /** Identifier of the removal posterior used. */
  readonly posterior_id: string;
  readonly defaults_used: readonly DefaultUsed[];
}

/** A piece of advice on the metal, with where it comes from. */
export interface Advice {
  /** What it is about, in words. */
  readonly topic: string;
  readonly text: string;
  readonly source: string;
  readonly provenance: 'confirmed' | 'memory' | 'derived' | 'common practice';
}

/** The whole result for one job: a plan, or a refusal, never both. */
export interface Answer {
  readonly inputs: AnswerInputs;
  readonly plan?: Plan;
  readonly refusal?: Refusal;
  /** Other plans, quickest first: those that no plan beats in time, cost and heat at once, and for comparison some that are beaten. */
  readonly alternatives: readonly Plan[];
  /** What shops do with this metal: polarity and electrode, each with its source. */
  readonly advice: readonly Advice[];
  /** What the kit makes of the plan; only where a kit was given. */
  readonly supply?: SupplyReport;
  /** Cautions that belong to this job and process, in words. */
  readonly cautions: readonly string[];
}

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

/**
 * Answers a job: composes material, removal, limits and planner into the whole result. The only door for
 * command line, server and app.
 *
 * @param read - the job as read [record], from `readJob`
 * @param programVersion - version of the program, written into the result [text], any
 * @returns inputs, plan or refusal, alternatives and cautions [record]
 * @source none: composition
 * @example
 * typeof answerJob // => "function"
 */
export function answerJob(read: ReadJob, programVersion: string): Answer {
  const { job } = read;
  const metal = metalOf(job.plate.material, job.plate.composition);
  const posterior = publishedPosterior(metal, job.seam.position);
  const result = planJob(job, posterior, [processLimits(posterior.meltingEnergy)]);
  return {
    inputs: {
      revision: read.revision,
      program_version: programVersion,
      seed: job.plan.seed,
      posterior_id: posterior.id,
      defaults_used: read.defaultsUsed,
    },
    ...('plan' in result ? { plan: result.plan } : { refusal: result.refusal }),
    alternatives: 'plan' in result ? result.alternatives : [],
    advice: [
      { topic: 'Polarity', ...metal.polarity },
      { topic: 'Electrode type', ...metal.electrodeType },
    ],
    cautions: [...posterior.remarks, ...jobCautions(job, metal), ...CAUTIONS],
  };
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
