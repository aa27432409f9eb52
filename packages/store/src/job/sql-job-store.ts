import type { Database } from '../database/database.ts';
import {
  type DocumentRevision,
  type DocumentSave,
  type DocumentSummary,
  documentTable,
  type StoredDocument,
  type Turn,
  writingOf,
} from '../document/document-table.ts';
import type { Work } from '../history/work.ts';
import type { JobContent, JobStore, SaveOutcome, StoredJob, StoredSummary } from './job-store.ts';

/** What a store is given from outside, so that a test can fix it. */
export interface StoreSources {
  readonly now: () => Date;
  readonly newId: () => string;
}

/** Jobs among the documents. `eraseWith` erases what belongs to a job elsewhere. */
export function sqlJobStore(
  { kind, place, kysely }: Database,
  work: Work,
  { now, newId }: StoreSources,
  eraseWith: (turn: Turn, id: string) => Promise<void>,
): JobStore {
  const { run, transact } = work;
  const jobs = documentTable(work, 'job');
  const put = async (turn: Turn, id: string, content: JobContent, basedOn: number): Promise<SaveOutcome> =>
    outcomeOf(await jobs.save(turn, id, basedOn, writingOf(kept(content)), now().toISOString()));
  return {
    kind,
    place,
    create: (content) => {
      const id = newId();
      return transact(async (transaction, note) => newJob(await put({ transaction, note }, id, content, 0)));
    },
    createAs: (id, content) => transact((transaction, note) => put({ transaction, note }, id, content, 0)),
    list: () => run(async () => (await jobs.list(kysely, 'kept')).map(summaryOf)),
    get: (id) => run(async () => jobOf(await jobs.find(kysely, id))),
    save: (id, content, basedOn) =>
      transact((transaction, note) => put({ transaction, note }, id, content, basedOn)),
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
      return transact(async (transaction, note) => {
        const original = jobOf(await jobs.find(transaction, id));
        return original && newJob(await put({ transaction, note }, copy, original, 0));
      });
    },
    bin: (id) => {
      let binned = false;
      return transact(async (transaction, note) => {
        if (await jobs.bin({ transaction, note }, id, now().toISOString())) binned = true;
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
      return transact(async (transaction, note) => {
        if (await jobs.restore({ transaction, note }, id)) restored = true;
        return restored ? jobOf(await jobs.find(transaction, id)) : undefined;
      });
    },
    erase: (id) => {
      let erased = false;
      return transact(async (transaction, note) => {
        // Out of the bin first: one that is in use is not erased, and one that is erased was not restored meanwhile.
        if (!(await jobs.restore({ transaction, note: () => undefined }, id))) return erased;
        await eraseWith({ transaction, note }, id);
        erased = await jobs.erase({ transaction, note }, id);
        return erased;
      });
    },
    eraseEarlier: (id) => transact((transaction, note) => jobs.eraseEarlier({ transaction, note }, id)),
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

function revisionOf({ number, revision, title, saved_at, saved_by }: Omit<DocumentRevision, 'content'>) {
  return { revision_number: number, revision, title, saved_at, saved_by };
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
