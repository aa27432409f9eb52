import { readJob, readKit, readTrials } from '@furrow/engine';
import type { Store, StoredRun } from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import type { Question } from '../work/open-work.ts';

/** What a run is held against: job, kit and trials as they were; undefined for a job that was a draft. */
export async function questionOf(
  store: Store,
  run: Pick<StoredRun, 'job_id' | 'revision_number' | 'kit_number' | 'knowledge_number'>,
): Promise<Question | undefined> {
  const { job_id, revision_number, kit_number, knowledge_number } = run;
  const job = await store.revision(job_id, revision_number);
  if (job === undefined)
    throw new Refused(
      'REVISION_NOT_FOUND',
      `Revision ${revision_number} of the job, which was run, is in the bin or was erased: the run cannot be held against it.`,
    );
  const read = readJob(job.text);
  if (!read.ok) return undefined;
  const kitText = kit_number === null ? undefined : (await store.kit.revision(kit_number))?.text;
  const trials =
    knowledge_number === null ? undefined : (await store.knowledge.revision(knowledge_number))?.text;
  const kit = kitText === undefined ? undefined : readKit(kitText);
  const usable = trials !== undefined && readTrials(trials).ok;
  return { read: read.value, kit: kit?.ok ? kit.value : undefined, knowledge: usable ? trials : undefined };
}
