import type { Work } from '../database/work.ts';
import { documentTable, writingOf } from '../document/document-table.ts';
import type { LoggerStore } from './logger-store.ts';

/** Logger descriptions among the documents, each under its content hash, so that none ever changes. */
export function sqlLoggerStore({ kysely, run, transact }: Work, shop: string, now: () => Date): LoggerStore {
  const table = documentTable(shop, 'logger');
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
      transact(async (transaction) => {
        const writing = writingOf({ content: text, title: name, revision });
        await table.save(transaction, revision, 0, writing, now().toISOString());
      }),
    erase: (revision) =>
      transact(async (transaction) => {
        await table.erase(transaction, revision);
      }),
  };
}
