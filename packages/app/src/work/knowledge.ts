import {
  answerKnowledge,
  answerNextTrial,
  type Issue,
  type JobAtHand,
  type KnowledgeReport,
  knowledgeOf,
  type NextTrialReport,
  readTrials,
} from '@furrow/engine';
import type { WorkerLink, WorkStep } from './protocol.ts';

/** Trials that are to be learned from. */
export interface KnowledgeRequest {
  readonly trials: string;
  /** The job that is open, which the next trial is to teach something for. */
  readonly job?: JobAtHand | undefined;
}

/** What they teach, or what is wrong with them. */
export type KnowledgePart =
  | {
      readonly is: 'report';
      readonly report: KnowledgeReport;
      /** The trial that teaches most per minute; undefined where no job is open. */
      readonly next?: NextTrialReport | undefined;
    }
  | { readonly is: 'issues'; readonly issues: readonly Issue[] };

/** The worker that tells what a shop knows. */
export type KnowledgeWorker = WorkerLink<KnowledgeRequest, KnowledgePart>;

/** What trials teach, whole. */
export function* knowledgeParts({ trials, job }: KnowledgeRequest): Generator<WorkStep<KnowledgePart>> {
  const read = readTrials(trials);
  if (!read.ok) {
    yield { is: 'part', part: { is: 'issues', issues: read.issues } };
    return;
  }
  const next = job === undefined ? undefined : answerNextTrial(knowledgeOf(read.value), [job]);
  yield { is: 'part', part: { is: 'report', report: answerKnowledge(read.value), next } };
}
