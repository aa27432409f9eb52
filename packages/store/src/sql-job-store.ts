import type { Kysely, Transaction } from 'kysely';
import type { Database } from './database.ts';
import type { JobContent, JobStore, SaveOutcome, StoredJob, StoredSummary } from './job-store.ts';
import type { Tables } from './tables.ts';
import { workOn } from './work.ts';

/** What a store is given from outside, so that a test can fix it. */
export interface StoreSources {
  readonly now: () => Date;
  readonly newId: () => string;
}

/** Jobs in the tables of a migrated database, of either kind. */
export function sqlJobStore(database: Database, { now, newId }: StoreSources): JobStore {
  const { kind, place } = database;
  const { kysely, run, transact } = workOn(database);
  return {
    kind,
    place,
    create: (content) => {
      const id = newId();
      return transact(async (transaction) => newJob(await createJob(transaction, id, content, now())));
    },
    createAs: (id, content) => transact((transaction) => createJob(transaction, id, content, now())),
    list: () =>
      run(async () => (await summaries(kysely).where('job.deleted_at', 'is', null).execute()).map(summaryOf)),
    get: (id) => run(() => findJob(kysely, id)),
    save: (id, content, basedOn) =>
      transact((transaction) => saveRevision(transaction, id, content, basedOn, now())),
    revisions: (id) =>
      run(async () => {
        const rows = await revisionsOf(kysely, id)
          .select(['number as revision_number', 'revision', 'title', 'saved_at'])
          .orderBy('number', 'desc')
          .execute();
        return rows.length === 0 ? undefined : rows;
      }),
    revision: (id, number) =>
      run(() =>
        revisionsOf(kysely, id)
          .where('number', '=', number)
          .select(['job_id as id', 'number as revision_number', 'revision', 'title', 'saved_at', 'text'])
          .executeTakeFirst(),
      ),
    duplicate: (id) => {
      const copy = newId();
      return transact(async (transaction) => {
        const original = await findJob(transaction, id);
        if (original === undefined) return undefined;
        const { text, title, revision } = original;
        return newJob(await createJob(transaction, copy, { text, title, revision }, now()));
      });
    },
    bin: (id) => {
      let binned = false;
      return transact(async (transaction) => {
        const { numUpdatedRows } = await transaction
          .updateTable('job')
          .set({ deleted_at: now().toISOString() })
          .where('id', '=', id)
          .where('deleted_at', 'is', null)
          .executeTakeFirst();
        binned ||= numUpdatedRows > 0n;
        return binned;
      });
    },
    listBin: () =>
      run(async () => {
        const rows = await summaries(kysely)
          .where('job.deleted_at', 'is not', null)
          .clearOrderBy()
          .orderBy('job.deleted_at', 'desc')
          .orderBy('job.id')
          .execute();
        return rows.map((row) => ({ ...summaryOf(row), deleted_at: row.deleted_at ?? '' }));
      }),
    restore: (id) => {
      let restored = false;
      return transact(async (transaction) => {
        const { numUpdatedRows } = await transaction
          .updateTable('job')
          .set({ deleted_at: null })
          .where('id', '=', id)
          .where('deleted_at', 'is not', null)
          .executeTakeFirst();
        restored ||= numUpdatedRows > 0n;
        return restored ? findJob(transaction, id) : undefined;
      });
    },
    close: () => kysely.destroy(),
  };
}

type SummaryRow = StoredSummary & { readonly deleted_at: string | null };

function summaryOf({ deleted_at: _, ...summary }: SummaryRow): StoredSummary {
  return summary;
}

/** Jobs joined with their newest revision, newest save first. */
function summaries(kysely: Kysely<Tables>) {
  return kysely
    .selectFrom('job')
    .innerJoin('job_revision', (join) =>
      join.onRef('job_revision.job_id', '=', 'job.id').onRef('job_revision.number', '=', 'job.latest'),
    )
    .select([
      'job.id',
      'job_revision.title',
      'job_revision.revision',
      'job.latest as revision_number',
      'job_revision.saved_at',
      'job.created_at',
      'job.deleted_at',
    ])
    .orderBy('job_revision.saved_at', 'desc')
    .orderBy('job.created_at', 'desc')
    .orderBy('job.id');
}

async function findJob(kysely: Kysely<Tables>, id: string): Promise<StoredJob | undefined> {
  const row = await summaries(kysely)
    .select('job_revision.text')
    .where('job.id', '=', id)
    .where('job.deleted_at', 'is', null)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const { deleted_at: _, ...job } = row;
  return job;
}

/** Revisions of a job outside the bin. */
function revisionsOf(kysely: Kysely<Tables>, id: string) {
  return kysely
    .selectFrom('job_revision')
    .where('job_id', '=', id)
    .where((where) =>
      where.exists(
        where.selectFrom('job').select('job.id').where('job.id', '=', id).where('job.deleted_at', 'is', null),
      ),
    );
}

/** A job of this id and text that is there already is this one, sent again. */
async function createJob(
  transaction: Transaction<Tables>,
  id: string,
  content: JobContent,
  time: Date,
): Promise<SaveOutcome> {
  const at = time.toISOString();
  const { numInsertedOrUpdatedRows: inserted } = await transaction
    .insertInto('job')
    .values({ id, created_at: at, deleted_at: null, latest: 1 })
    .onConflict((conflict) => conflict.doNothing())
    .executeTakeFirst();
  if (inserted === 1n) {
    await insertRevision(transaction, id, 1, content, at);
    return { ok: true, job: { id, ...content, revision_number: 1, saved_at: at, created_at: at } };
  }
  const newer = await findJob(transaction, id);
  if (newer === undefined) return { ok: false, code: 'JOB_NOT_FOUND' };
  return newer.text === content.text
    ? { ok: true, job: newer }
    : { ok: false, code: 'JOB_CHANGED_MEANWHILE', newer };
}

function newJob(outcome: SaveOutcome): StoredJob {
  if (!outcome.ok) throw new Error('the identifier of a new job is taken');
  return outcome.job;
}

async function insertRevision(
  transaction: Transaction<Tables>,
  id: string,
  number: number,
  { text, title, revision }: JobContent,
  at: string,
): Promise<void> {
  await transaction
    .insertInto('job_revision')
    .values({ job_id: id, number, text, title, revision, saved_at: at })
    .execute();
}

/**
 * The update comes first: it takes the write lock (SQLite) or the row's lock (PostgreSQL), so that of two
 * saves based on the same revision exactly one finds it still the newest. If the next one is of the very same text, that
 * save is this one, sent again.
 */
async function saveRevision(
  transaction: Transaction<Tables>,
  id: string,
  content: JobContent,
  basedOn: number,
  time: Date,
): Promise<SaveOutcome> {
  const number = basedOn + 1;
  const { numUpdatedRows } = await transaction
    .updateTable('job')
    .set({ latest: number })
    .where('id', '=', id)
    .where('latest', '=', basedOn)
    .where('deleted_at', 'is', null)
    .executeTakeFirst();
  if (numUpdatedRows === 0n) {
    const newer = await findJob(transaction, id);
    if (newer === undefined) return { ok: false, code: 'JOB_NOT_FOUND' };
    return newer.revision_number === number && newer.text === content.text
      ? { ok: true, job: newer }
      : { ok: false, code: 'JOB_CHANGED_MEANWHILE', newer };
  }
  await insertRevision(transaction, id, number, content, time.toISOString());
  const job = await findJob(transaction, id);
  if (job === undefined) throw new Error(`job ${id} vanished within its own transaction`);
  return { ok: true, job };
}
