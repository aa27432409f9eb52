import type { DefaultUsed } from '../job/index.ts';
import type { Plan, Refusal } from '../plan/index.ts';

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

/** The whole result for one job: a plan, or a refusal, never both. */
export interface Answer {
  readonly inputs: AnswerInputs;
  readonly plan?: Plan;
  readonly refusal?: Refusal;
  /** Other plans that no plan beats in time, cost and heat at once, quickest first. */
  readonly alternatives: readonly Plan[];
  /** Cautions that belong to this job and process, in words. */
  readonly cautions: readonly string[];
}
