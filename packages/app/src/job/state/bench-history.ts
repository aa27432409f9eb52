import type { SavedShopFile } from '@furrow/contract';
import { fetchTrials, fetchTrialsExamples, fetchTrialsRevisions } from '../../api/index.ts';
import type { BenchHistory } from './bench-state.ts';

/** What the shop has tried and gauged, where a job is opened. */
export type BenchTrials = Pick<BenchHistory, 'trials' | 'moreSince'>;

/**
 * What the shop has tried and gauged. A demo job of a shop without trials of its own is planned with the invented ones;
 * no job of the shop's ever is. Undefined where nobody answers.
 */
export async function fetchHistory(
  demo: boolean,
  savedAt: string | undefined,
): Promise<BenchTrials | undefined> {
  const reply = await fetchTrials();
  if (!reply.ok) return undefined;
  const { valid, revision_number, text } = reply.value;
  if (valid && revision_number > 0) {
    return { trials: text, moreSince: await learnedSince(reply.value, savedAt) };
  }
  const invented = demo ? await fetchTrialsExamples() : undefined;
  return { trials: invented?.ok === true ? invented.value[0]?.text : undefined, moreSince: false };
}

/** Whether the trials are others than those of the time at which a job was saved. */
async function learnedSince(now: SavedShopFile, savedAt: string | undefined): Promise<boolean> {
  if (savedAt === undefined || now.saved_at === null || now.saved_at <= savedAt) return false;
  const reply = await fetchTrialsRevisions();
  if (!reply.ok) return false;
  return reply.value.find(({ saved_at }) => saved_at <= savedAt)?.revision !== now.revision;
}
