import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, readJob } from '@furrow/engine';
import { learnedFrom } from './learned-from.ts';
import type { PlanReply, PlanRequest } from './message.ts';

/** Reads and plans the job of one request; whatever happens, there is a reply. */
export function answerText({ id, text, read: known, kit, knowledge, units }: PlanRequest): PlanReply {
  try {
    const read = known === undefined ? readJob(text) : ({ ok: true, value: known } as const);
    if (!read.ok) return { id, is: 'issues', issues: read.issues };
    const answer = answerJob({
      job: read.value,
      version: PROGRAM_VERSION,
      kit,
      knowledge: learnedFrom(knowledge),
      system: units,
    });
    return { id, is: 'answer', read: read.value, answer };
  } catch (error) {
    return { id, is: 'failure', message: error instanceof Error ? error.message : String(error) };
  }
}
