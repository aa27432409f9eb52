import { documentTable, writingOf } from '../document/document-table.ts';
import type { Work } from '../history/work.ts';
import type { LoggerStore } from './logger-store.ts';

/** Logger descriptions among the documents, each under its content hash, so that none ever changes. */
export function sqlLoggerStore(work: Work, now: () => Date): LoggerStore {
  const { kysely, run, transact } = work;
  const table = documentTable(work, 'logger');
  return {
    list: () =>
      run(async () => {
        const kept = await table.list(kysely, 'kept');
        const found = await Promise.all(kept.map(({ id }) => table.find(kysely, id)));
        return found.flatMap((each) =>
          each === undefined
            ? []
            : [{ revision: each.id, name: each.title, text: each.content, saved_at: each.saved_at }],
        );
      }),
    put: ({ revision, name, text }) =>
      transact(async (transaction, note) => {
        const writing = writingOf({ content: text, title: name, revision });
        await table.save({ transaction, note }, revision, 0, writing, now().toISOString());
      }),
    erase: (revision) =>
      transact(async (transaction, note) => {
        await table.erase({ transaction, note }, revision);
      }),
  };
}
