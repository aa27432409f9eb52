import { answerKnowledge, type Issue, type KnowledgeReport, readTrials } from '@furrow/engine';
import type { WorkerLink, WorkStep } from './protocol.ts';

/** Trials that are to be learned from. */
export interface KnowledgeRequest {
  readonly trials: string;
}

/** What they teach, or what is wrong with them. */
export type KnowledgePart =
  | { readonly is: 'report'; readonly report: KnowledgeReport }
  | { readonly is: 'issues'; readonly issues: readonly Issue[] };

/** The worker that tells what a shop knows. */
export type KnowledgeWorker = WorkerLink<KnowledgeRequest, KnowledgePart>;

/** What trials teach, whole. */
export function* knowledgeParts({ trials }: KnowledgeRequest): Generator<WorkStep<KnowledgePart>> {
  const read = readTrials(trials);
  const part: KnowledgePart = read.ok
    ? { is: 'report', report: answerKnowledge(read.value) }
    : { is: 'issues', issues: read.issues };
  yield { is: 'part', part };
}
