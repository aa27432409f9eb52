import type { KnowledgeReply, KnowledgeRequest } from './knowledge-message.ts';
import { linkWorker, type WorkerLink } from './worker-link.ts';

/** The worker that tells what a shop knows. */
export type KnowledgeWorker = WorkerLink<KnowledgeRequest, KnowledgeReply>;

/** Starts it. */
export function startKnowledgeWorker(): KnowledgeWorker {
  return linkWorker(
    new Worker(new URL('./knowledge-worker.ts', import.meta.url), { type: 'module', name: 'knowledge' }),
    'knowledge worker',
  );
}
