import type { Kysely } from 'kysely';
import type { Tables } from '../database/tables.ts';
import { documentTable, type StoredDocument } from '../document/document-table.ts';
import type { Work } from '../history/work.ts';
import type { CommissioningContent, CommissioningStore, StoredCommissioning } from './commissioning-store.ts';
import { isUnchangedBy, stampCommissioning } from './stamp-commissioning.ts';

const NOTHING: CommissioningContent = { readings: {}, ticks: {}, findings: [] };

/** The readings of the jobs among the documents, each under the identifier of its job. */
export function sqlCommissioningStore(work: Work, now: () => Date): CommissioningStore {
  const { kysely, run, transact } = work;
  const jobs = documentTable(work, 'job');
  const rigs = documentTable(work, 'rig');
  const newest = async (on: Kysely<Tables>, jobId: string): Promise<StoredCommissioning | undefined> => {
    const rig = await rigs.find(on, jobId);
    // The job is looked for last: one that was put into the bin meanwhile has no readings.
    return (await jobs.find(on, jobId)) === undefined ? undefined : commissioningOf(jobId, rig);
  };
  return {
    get: (jobId) => run(() => newest(kysely, jobId)),
    save: (jobId, entry, basedOn) =>
      transact(async (transaction, note) => {
        if ((await jobs.find(transaction, jobId)) === undefined) return { ok: false, code: 'JOB_NOT_FOUND' };
        const at = now().toISOString();
        const save = await rigs.save(
          { transaction, note },
          jobId,
          basedOn,
          {
            write: (before) => ({
              content: JSON.stringify(stampCommissioning(contentOf(before), entry, at)),
              title: '',
              revision: null,
            }),
            isKept: (content) => isUnchangedBy(contentOf(content), entry),
          },
          at,
        );
        if (save.ok) return { ok: true, commissioning: commissioningOf(jobId, save.document) };
        return {
          ok: false,
          code: 'COMMISSIONING_CHANGED_MEANWHILE',
          newer: commissioningOf(jobId, save.newer),
        };
      }),
    erase: (jobId) => {
      let erased = false;
      return transact(async (transaction, note) => {
        if (await rigs.erase({ transaction, note }, jobId)) erased = true;
        return erased;
      });
    },
  };
}

function contentOf(content: string | undefined): CommissioningContent {
  return content === undefined ? NOTHING : (JSON.parse(content) as CommissioningContent);
}

function commissioningOf(jobId: string, rig: StoredDocument | undefined): StoredCommissioning {
  return {
    job_id: jobId,
    revision_number: rig?.number ?? 0,
    saved_at: rig?.saved_at ?? null,
    ...contentOf(rig?.content),
  };
}
