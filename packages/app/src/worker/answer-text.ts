import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, readJob } from '@furrow/engine';
import type { PlanReply, PlanRequest } from './message.ts';

/** Reads and plans the job of one request; whatever happens, there is a reply. */
export function answerText({ id, text }: PlanRequest): PlanReply {
  try {
    const read = readJob(text);
    if (!read.ok) return { id, is: 'issues', issues: read.issues };
    return { id, is: 'answer', read: read.value, answer: answerJob(read.value, PROGRAM_VERSION) };
  } catch (error) {
    return { id, is: 'failure', message: error instanceof Error ? error.message : String(error) };
  }
}
