import type { Issue, KnowledgeReport } from '@furrow/engine';

/** Trials that are to be learned from; a newer request takes the place of one that waits. */
export interface KnowledgeRequest {
  readonly id: number;
  readonly trials: string;
}

/** What came of it. */
export type KnowledgeReply =
  | { readonly id: number; readonly is: 'report'; readonly report: KnowledgeReport }
  | { readonly id: number; readonly is: 'issues'; readonly issues: readonly Issue[] }
  | { readonly id: number; readonly is: 'failure'; readonly message: string };
