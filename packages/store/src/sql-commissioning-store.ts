import type { Kysely, Transaction } from 'kysely';
import type {
  CommissioningContent,
  CommissioningEntry,
  CommissioningSaveOutcome,
  CommissioningStore,
  StoredCommissioning,
} from './commissioning-store.ts';
import { isUnchangedBy, stampCommissioning } from './stamp-commissioning.ts';
import type { Tables } from './tables.ts';
import type { Work } from './work.ts';

/** The readings of the jobs in their table. */
export function sqlCommissioningStore({ kysely, run, transact }: Work, now: () => Date): CommissioningStore {
  return {
    get: (jobId) => run(() => newest(kysely, jobId)),
    save: (jobId, entry, basedOn) =>
      transact((transaction) => saveEntry(transaction, jobId, entry, basedOn, now().toISOString())),
  };
}

/** One query, so that the job and its readings are of the same moment. */
async function newest(kysely: Kysely<Tables>, jobId: string): Promise<StoredCommissioning | undefined> {
  const row = await kysely
    .selectFrom('job')
    .leftJoin('commissioning', 'commissioning.job_id', 'job.id')
    .select(['commissioning.number', 'commissioning.content', 'commissioning.saved_at'])
    .where('job.id', '=', jobId)
    .where('job.deleted_at', 'is', null)
    .orderBy('commissioning.number', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  if (row.number === null || row.content === null) {
    return {
      job_id: jobId,
      revision_number: 0,
      saved_at: null,
      readings: {},
      ticks: {},
      findings: [],
    };
  }
  const content = JSON.parse(row.content) as CommissioningContent;
  return { job_id: jobId, revision_number: row.number, saved_at: row.saved_at, ...content };
}

/**
 * Of two saves based on the same revision exactly one gets to insert the next number. If that number is taken by the
 * very same entries, that save is this one, sent again.
 */
async function saveEntry(
  transaction: Transaction<Tables>,
  jobId: string,
  entry: CommissioningEntry,
  basedOn: number,
  at: string,
): Promise<CommissioningSaveOutcome> {
  const before = await newest(transaction, jobId);
  if (before === undefined) return { ok: false, code: 'JOB_NOT_FOUND' };
  if (before.revision_number === basedOn) {
    const content = stampCommissioning(before, entry, at);
    const number = basedOn + 1;
    const { numInsertedOrUpdatedRows: inserted } = await transaction
      .insertInto('commissioning')
      .values({ job_id: jobId, number, content: JSON.stringify(content), saved_at: at })
      .onConflict((conflict) => conflict.doNothing())
      .executeTakeFirst();
    if (inserted === 1n) {
      return {
        ok: true,
        commissioning: { job_id: jobId, revision_number: number, saved_at: at, ...content },
      };
    }
  }
  const newer = await newest(transaction, jobId);
  if (newer === undefined) return { ok: false, code: 'JOB_NOT_FOUND' };
  return newer.revision_number === basedOn + 1 && isUnchangedBy(newer, entry)
    ? { ok: true, commissioning: newer }
    : { ok: false, code: 'COMMISSIONING_CHANGED_MEANWHILE', newer };
}
