import type { Work } from '../database/work.ts';
import {
  type DocumentContent,
  type DocumentKind,
  type DocumentRevision,
  type DocumentSave,
  type DocumentSummary,
  documentTable,
  type RevisionSummary,
  type StoredDocument,
  writingOf,
} from './document-table.ts';

/** Documents of one kind, each kept with every revision that was ever saved. */
export interface DocumentStore {
  get(id: string): Promise<StoredDocument | undefined>;
  /** Newest save first. */
  list(): Promise<readonly DocumentSummary[]>;
  /** Saves the next revision, provided that `basedOn` is still the newest one; 0 for the first. */
  save(id: string, content: DocumentContent, basedOn: number): Promise<DocumentSave>;
  /** Newest first; empty if there is no such document. */
  revisions(id: string): Promise<readonly RevisionSummary[]>;
  revision(id: string, number: number): Promise<DocumentRevision | undefined>;
  /** Erases a document with all revisions for good; false if there is none. */
  erase(id: string): Promise<boolean>;
  /** Erases all revisions but the newest for good; how many they were, undefined if there is no such document. */
  eraseEarlier(id: string): Promise<number | undefined>;
}

/** The documents of a kind in one shop: all that a new kind needs. */
export function documentStore(
  { kysely, run, transact }: Work,
  shop: string,
  kind: DocumentKind,
  now: () => Date,
): DocumentStore {
  const table = documentTable(shop, kind);
  return {
    get: (id) => run(() => table.find(kysely, id)),
    list: () => run(() => table.list(kysely, 'kept')),
    save: (id, content, basedOn) =>
      transact((transaction) =>
        table.save(transaction, id, basedOn, writingOf(content), now().toISOString()),
      ),
    revisions: (id) => run(() => table.revisions(kysely, id)),
    revision: (id, number) => run(() => table.revision(kysely, id, number)),
    erase: (id) => {
      let erased = false;
      return transact(async (transaction) => {
        if (await table.erase(transaction, id)) erased = true;
        return erased;
      });
    },
    eraseEarlier: (id) => transact((transaction) => table.eraseEarlier(transaction, id)),
  };
}
