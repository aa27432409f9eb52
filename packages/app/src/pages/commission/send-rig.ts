import { fetchCommissioning, saveCommissioning } from '../../api/index.ts';
import { type KeptEnd, sendKept } from '../../sheet/keep/index.ts';
import { openRig } from './rig.ts';
import { rigDraftOf } from './rig-draft.ts';

/** Sends what was ticked, read and found at the rig of a saved job while the server was not reached. */
export async function sendRig(job: string, memory: Storage): Promise<KeptEnd> {
  const saved = await fetchCommissioning(job);
  if (!saved.ok) return saved.failure.unreached === true ? 'waits' : 'asks';
  const send = (save: Parameters<typeof saveCommissioning>[1]) => saveCommissioning(job, save);
  const later = (): (() => void) => () => {};
  return sendKept(openRig(job, saved.value, rigDraftOf(memory, job), { send, memory, later }));
}
