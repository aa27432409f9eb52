import { documentTable, writingOf } from '../document/document-table.ts';
import type { Work } from '../history/work.ts';
import { fileOf, summaryOf } from '../shop-file/shop-file-row.ts';
import type { ReadingsStore } from './readings-store.ts';

/** How a readings file names a file that was measured. */
const SHA256 = /\b[0-9a-f]{64}\b/gu;

/** What was run and gauged on the jobs among the documents, each under the identifier of its job. */
export function sqlReadingsStore(work: Work, now: () => Date): ReadingsStore {
  const { kysely, run, transact, desk } = work;
  const jobs = documentTable(work, 'job');
  const table = documentTable(work, 'readings');
  const contents = (on: typeof kysely) =>
    on
      .selectFrom('document_revision')
      .select('content')
      .where('shop', '=', desk.shop)
      .where('kind', '=', 'readings');
  return {
    get: (jobId) =>
      run(async () => {
        const found = fileOf(await table.find(kysely, jobId));
        // The job is looked for last: one that was put into the bin meanwhile has no readings.
        return (await jobs.find(kysely, jobId)) === undefined ? undefined : (found ?? null);
      }),
    save: (jobId, { text, title, revision }, basedOn) =>
      transact(async (transaction, note) => {
        if ((await jobs.find(transaction, jobId)) === undefined) return { ok: false, code: 'JOB_NOT_FOUND' };
        const writing = writingOf({ content: text, title, revision });
        const save = await table.save({ transaction, note }, jobId, basedOn, writing, now().toISOString());
        return save.ok
          ? { ok: true, saved: { ...summaryOf(save.document), text: save.document.content } }
          : { ok: false, code: 'READINGS_CHANGED_MEANWHILE', newer: fileOf(save.newer) };
      }),
    revisions: (jobId) =>
      run(async () => {
        const found = (await table.revisions(kysely, jobId)).map(summaryOf);
        return (await jobs.find(kysely, jobId)) === undefined ? undefined : found;
      }),
    revision: (jobId, number) =>
      run(async () =>
        (await jobs.find(kysely, jobId)) === undefined
          ? undefined
          : fileOf(await table.revision(kysely, jobId, number)),
      ),
    hashesOf: (jobId) =>
      run(async () => {
        const rows = await contents(kysely).where('id', '=', jobId).execute();
        return [...new Set(rows.flatMap(({ content }) => content.match(SHA256) ?? []))];
      }),
    hasFile: (sha256) =>
      run(
        async () =>
          (await contents(kysely).where('content', 'like', `%${sha256}%`).limit(1).executeTakeFirst()) !==
          undefined,
      ),
    erase: (jobId) => {
      let erased = false;
      return transact(async (transaction, note) => {
        if (await table.erase({ transaction, note }, jobId)) erased = true;
        return erased;
      });
    },
  };
}
