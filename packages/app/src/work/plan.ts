import { PROGRAM_VERSION } from '@furrow/contract';
import { type Answer, answerJob, type ReadJob, type ReadKit } from '@furrow/engine';
import { learnedFrom } from './learned-from.ts';
import type { WorkerLink, WorkStep } from './protocol.ts';

/** A job to plan. */
export interface PlanRequest {
  readonly read: ReadJob;
  /** The kit to plan with; without one the process alone is planned. */
  readonly kit?: ReadKit | undefined;
  /** Text of the trials that the shop has learned from; the published rows alone without. */
  readonly knowledge?: string | undefined;
}

/** The worker that plans. */
export type PlanWorker = WorkerLink<PlanRequest, Answer>;

/** The answer of a job, whole. */
export function* planParts({ read, kit, knowledge }: PlanRequest): Generator<WorkStep<Answer>> {
  const learned = learnedFrom(knowledge);
  const part = answerJob({ job: read, version: PROGRAM_VERSION, kit, knowledge: learned });
  yield { is: 'part', part };
}
