import { fetchReadings, saveReadings } from '../../api/index.ts';
import { type KeptEnd, sendKept } from '../../sheet/keep/index.ts';
import { openReadings } from './readings-desk.ts';

/** Sends what was measured on a saved job while the server was not reached. */
export async function sendReadings(job: string, memory: Storage): Promise<KeptEnd> {
  const saved = await fetchReadings(job);
  if (!saved.ok) return saved.failure.unreached === true ? 'waits' : 'asks';
  const send = (text: string, basedOn: number) => saveReadings(job, text, basedOn);
  const later = (): (() => void) => () => {};
  return sendKept(openReadings(job, saved.value, '', { send, memory, later }));
}
