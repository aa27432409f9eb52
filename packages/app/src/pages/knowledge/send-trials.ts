import { fetchTrials } from '../../api/index.ts';
import { type KeptEnd, sendKept } from '../../sheet/keep/index.ts';
import { openKnowledgeDesk } from './knowledge-desk.ts';

/** Sends trials and finished jobs that were entered while the server was not reached. */
export async function sendTrials(memory: Storage): Promise<KeptEnd> {
  const saved = await fetchTrials();
  if (!saved.ok) return saved.failure.unreached === true ? 'waits' : 'asks';
  return sendKept(openKnowledgeDesk(saved.value, memory));
}
