import { fetchGauge } from '../../api/index.ts';
import { type KeptEnd, sendKept } from '../../sheet/keep/index.ts';
import { openGauge } from './gauge-desk.ts';

/** Sends what was entered of the shop's gauge while the server was not reached. */
export async function sendGauge(memory: Storage): Promise<KeptEnd> {
  const saved = await fetchGauge();
  if (!saved.ok) return saved.failure.unreached === true ? 'waits' : 'asks';
  return sendKept(openGauge(saved.value, memory));
}
