import type { Transaction } from 'kysely';
import type { Database } from '../database/database.ts';
import type { Tables } from '../database/tables.ts';
import type { Work } from '../database/work.ts';
import {
  type DocumentRevision,
  type DocumentSave,
  type DocumentSummary,
  documentTable,
  type StoredDocument,
  writingOf,
} from '../document/document-table.ts';
import type { JobContent, JobStore, SaveOutcome, StoredJob, StoredSummary } from './job-store.ts';

/** What a store is given from outside, so that a test can fix it. */
export interface StoreSources {
  readonly now: () => Date;
  readonly newId: () => string;
}

/** Jobs among the documents. `eraseWith` erases what belongs to a job elsewhere. */
export function sqlJobStore(
  { kind, place, kysely }: Database,
  { run, transact }: Work,
  shop: string,
  { now, newId }: StoreSources,
  eraseWith: (transaction: Transaction<Tables>, id: string) => Promise<void>,
): JobStore {
  const jobs = documentTable(shop, 'job');
  const put = async (
    transaction: Transaction<Tables>,
    id: string,
    content: JobContent,
    basedOn: number,
  ): Promise<SaveOutcome> =>
    outcomeOf(await jobs.save(transaction, id, basedOn, writingOf(kept(content)), now().toISOString()));
  return {
    kind,
    place,
    create: (content) => {
      const id = newId();
      return transact(async (transaction) => newJob(await put(transaction, id, content, 0)));
    },
    createAs: (id, content) => transact((transaction) => put(transaction, id, content, 0)),
    list: () => run(async () => (await jobs.list(kysely, 'kept')).map(summaryOf)),
    get: (id) => run(async () => jobOf(await jobs.find(kysely, id))),
    save: (id, content, basedOn) => transact((transaction) => put(transaction, id, content, basedOn)),
    revisions: (id) =>
      run(async () => {
        const revisions = await jobs.revisions(kysely, id);
        return revisions.length === 0 ? undefined : revisions.map(revisionOf);
      }),
    revision: (id, number) =>
      run(async () => {
        const found = await jobs.revision(kysely, id, number);
        return found && { id, text: found.content, ...revisionOf(found) };
      }),
    duplicate: (id) => {
      const copy = newId();
      return transact(async (transaction) => {
        const original = jobOf(await jobs.find(transaction, id));
        return original && newJob(await put(transaction, copy, original, 0));
      });
    },
    bin: (id) => {
      let binned = false;
      return transact(async (transaction) => {
        if (await jobs.bin(transaction, id, now().toISOString())) binned = true;
        return binned;
      });
    },
    listBin: () =>
      run(async () =>
        (await jobs.list(kysely, 'binned')).map((each) => ({
          ...summaryOf(each),
          deleted_at: each.deleted_at ?? '',
        })),
      ),
    restore: (id) => {
      let restored = false;
      return transact(async (transaction) => {
        if (await jobs.restore(transaction, id)) restored = true;
        return restored ? jobOf(await jobs.find(transaction, id)) : undefined;
      });
    },
    erase: (id) => {
      let erased = false;
      return transact(async (transaction) => {
        // Out of the bin first: one that is in use is not erased, and one that is erased was not restored meanwhile.
        if (!(await jobs.restore(transaction, id))) return erased;
        await eraseWith(transaction, id);
        erased = await jobs.erase(transaction, id);
        return erased;
      });
    },
    eraseEarlier: (id) => transact((transaction) => jobs.eraseEarlier(transaction, id)),
    close: () => kysely.destroy(),
  };
}

function kept({ text, title, revision }: JobContent): {
  readonly content: string;
  readonly title: string;
  readonly revision: string | null;
} {
  return { content: text, title, revision };
}

function revisionOf({ number, revision, title, saved_at }: Omit<DocumentRevision, 'content'>) {
  return { revision_number: number, revision, title, saved_at };
}

function summaryOf(document: DocumentSummary): StoredSummary {
  return { id: document.id, ...revisionOf(document), created_at: document.created_at };
}

function jobOf(document: StoredDocument | undefined): StoredJob | undefined {
  return document && { ...summaryOf(document), text: document.content };
}

function outcomeOf(save: DocumentSave): SaveOutcome {
  if (save.ok) return { ok: true, job: { ...summaryOf(save.document), text: save.document.content } };
  const newer = jobOf(save.newer);
  return newer === undefined
    ? { ok: false, code: 'JOB_NOT_FOUND' }
    : { ok: false, code: 'JOB_CHANGED_MEANWHILE', newer };
}

function newJob(outcome: SaveOutcome): StoredJob {
  if (!outcome.ok) throw new Error('the identifier of a new job is taken');
  return outcome.job;
}
