import { type DocumentKind, documentTable, writingOf } from '../document/document-table.ts';
import type { Work } from '../history/work.ts';
import { fileOf, summaryOf } from './shop-file-row.ts';
import type { ShopFileStore } from './shop-file-store.ts';

/** The one document of its kind in a shop, known by the name of the kind. */
export function sqlShopFileStore(
  work: Work,
  kind: Extract<DocumentKind, 'kit' | 'knowledge' | 'gauge'>,
  now: () => Date,
): ShopFileStore {
  const { kysely, run, transact } = work;
  const table = documentTable(work, kind);
  return {
    get: () => run(async () => fileOf(await table.find(kysely, kind))),
    save: ({ text, title, revision }, basedOn) =>
      transact(async (transaction, note) => {
        const writing = writingOf({ content: text, title, revision });
        const save = await table.save({ transaction, note }, kind, basedOn, writing, now().toISOString());
        return save.ok
          ? { ok: true, saved: { ...summaryOf(save.document), text: save.document.content } }
          : { ok: false, newer: fileOf(save.newer) };
      }),
    revisions: () => run(async () => (await table.revisions(kysely, kind)).map(summaryOf)),
    revision: (number) => run(async () => fileOf(await table.revision(kysely, kind, number))),
    eraseEarlier: () =>
      transact(async (transaction, note) => (await table.eraseEarlier({ transaction, note }, kind)) ?? 0),
  };
}
