import { answerKnowledge, readTrials } from '@furrow/engine';
import type { KnowledgeReply, KnowledgeRequest } from './knowledge-message.ts';

/** Tells what trials teach; whatever happens, there is a reply. */
export function knowledgeReply({ id, trials }: KnowledgeRequest): KnowledgeReply {
  try {
    const read = readTrials(trials);
    if (!read.ok) return { id, is: 'issues', issues: read.issues };
    return { id, is: 'report', report: answerKnowledge(read.value) };
  } catch (error) {
    return { id, is: 'failure', message: error instanceof Error ? error.message : String(error) };
  }
}
