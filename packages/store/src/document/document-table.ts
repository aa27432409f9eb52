import type { Kysely, Transaction } from 'kysely';
import type { Tables } from '../database/tables.ts';
import { contentHash } from '../history/change.ts';
import type { Note, Work } from '../history/work.ts';

/** The kinds of documents that are kept with every revision. */
export type DocumentKind = 'job' | 'kit' | 'rig' | 'knowledge' | 'gauge' | 'readings' | 'logger';

/** What is saved of a document: its content as written, and what was read from it. */
export interface DocumentContent {
  readonly content: string;
  readonly title: string;
  /** Content hash as read; null for a draft that cannot be read, or for a kind that has none. */
  readonly revision: string | null;
}

/** One revision of a document, without its content. */
export interface RevisionSummary {
  /** From 1 [-]. */
  readonly number: number;
  readonly title: string;
  readonly revision: string | null;
  /** ISO 8601, UTC. */
  readonly saved_at: string;
  /** Name of the account that saved it; null where nobody signed in. */
  readonly saved_by: string | null;
}

/** One revision of a document. */
export type DocumentRevision = RevisionSummary & DocumentContent;

/** A document without its content, at its newest revision. */
export interface DocumentSummary extends RevisionSummary {
  readonly id: string;
  readonly created_at: string;
  /** When it was put into the bin; null outside it. */
  readonly deleted_at: string | null;
}

/** A document at its newest revision. */
export type StoredDocument = DocumentSummary & DocumentContent;

/** What a save writes. */
export interface Writing {
  /** What is to be kept, given the content of the revision that the save is based on. */
  readonly write: (before: string | undefined) => DocumentContent;
  /** Whether what is kept is what this save would have kept: then it is this save, sent again. */
  readonly isKept: (content: string) => boolean;
}

/** What came of a save: the document as it is now; if it was not saved, undefined where there is none outside the bin. */
export type DocumentSave =
  | { readonly ok: true; readonly document: StoredDocument }
  | { readonly ok: false; readonly newer: StoredDocument | undefined };

/** A transaction and what notes its changes. */
export interface Turn {
  readonly transaction: Transaction<Tables>;
  readonly note: Note;
}

/** The documents of one kind in one shop. Whatever changes something is given its turn. */
export interface DocumentTable {
  /** Undefined if there is none of this id outside the bin. */
  find(kysely: Kysely<Tables>, id: string): Promise<StoredDocument | undefined>;
  /** Those outside the bin, newest save first, or those in it, newest there first. */
  list(kysely: Kysely<Tables>, where: 'kept' | 'binned'): Promise<readonly DocumentSummary[]>;
  /** Saves the next revision, provided that `basedOn` is still the newest one; 0 for the first. */
  save(turn: Turn, id: string, basedOn: number, writing: Writing, at: string): Promise<DocumentSave>;
  /** Newest first; empty if there is no such document outside the bin. */
  revisions(kysely: Kysely<Tables>, id: string): Promise<readonly RevisionSummary[]>;
  revision(kysely: Kysely<Tables>, id: string, number: number): Promise<DocumentRevision | undefined>;
  /** Puts a document into the bin; false if there is none outside it. */
  bin(turn: Turn, id: string, at: string): Promise<boolean>;
  /** Takes a document out of the bin; false if there is none in it. */
  restore(turn: Turn, id: string): Promise<boolean>;
  /** Erases a document with all revisions for good, wherever it is; false if there is none. */
  erase(turn: Turn, id: string): Promise<boolean>;
  /** Erases all revisions but the newest for good; how many they were, undefined if there is no such document. */
  eraseEarlier(turn: Turn, id: string): Promise<number | undefined>;
}

/** The one way of saving: every kind of document goes through it. */
export function documentTable({ desk }: Pick<Work, 'desk'>, kind: DocumentKind): DocumentTable {
  const { shop } = desk;
  const summaries = (kysely: Kysely<Tables>) =>
    kysely
      .selectFrom('document')
      .innerJoin('document_revision', (join) =>
        join
          .onRef('document_revision.shop', '=', 'document.shop')
          .onRef('document_revision.kind', '=', 'document.kind')
          .onRef('document_revision.id', '=', 'document.id')
          .onRef('document_revision.number', '=', 'document.latest'),
      )
      .where('document.shop', '=', shop)
      .where('document.kind', '=', kind)
      .select([
        'document.id',
        'document_revision.number',
        'document_revision.title',
        'document_revision.revision',
        'document_revision.saved_at',
        'document_revision.saved_by',
        'document.created_at',
        'document.deleted_at',
      ]);
  const find: DocumentTable['find'] = (kysely, id) =>
    summaries(kysely)
      .select('document_revision.content')
      .where('document.id', '=', id)
      .where('document.deleted_at', 'is', null)
      .executeTakeFirst();
  const heads = (transaction: Transaction<Tables>, id: string) =>
    transaction
      .updateTable('document')
      .where('shop', '=', shop)
      .where('kind', '=', kind)
      .where('id', '=', id);
  /** Revisions of a document outside the bin. */
  const revisionsOf = (kysely: Kysely<Tables>, id: string) =>
    kysely
      .selectFrom('document_revision')
      .innerJoin('document', (join) =>
        join
          .onRef('document.shop', '=', 'document_revision.shop')
          .onRef('document.kind', '=', 'document_revision.kind')
          .onRef('document.id', '=', 'document_revision.id'),
      )
      .where('document.shop', '=', shop)
      .where('document.kind', '=', kind)
      .where('document.id', '=', id)
      .where('document.deleted_at', 'is', null)
      .select([
        'document_revision.number',
        'document_revision.title',
        'document_revision.revision',
        'document_revision.saved_at',
        'document_revision.saved_by',
      ]);

  /**
   * Takes the turn of this save: the head's row is locked by it (PostgreSQL) or the whole file was (SQLite), so that
   * of two saves based on the same revision exactly one finds it still the newest.
   */
  const takeTurn = async (
    transaction: Transaction<Tables>,
    id: string,
    basedOn: number,
    at: string,
  ): Promise<boolean> => {
    if (basedOn > 0) {
      const { numUpdatedRows } = await heads(transaction, id)
        .set({ latest: basedOn + 1 })
        .where('latest', '=', basedOn)
        .where('deleted_at', 'is', null)
        .executeTakeFirst();
      return numUpdatedRows > 0n;
    }
    const { numInsertedOrUpdatedRows: inserted } = await transaction
      .insertInto('document')
      .values({ shop, kind, id, created_at: at, deleted_at: null, latest: 1 })
      .onConflict((conflict) => conflict.doNothing())
      .executeTakeFirst();
    return inserted === 1n;
  };

  return {
    find,
    list: (kysely, where) =>
      where === 'kept'
        ? summaries(kysely)
            .where('document.deleted_at', 'is', null)
            .orderBy('document_revision.saved_at', 'desc')
            .orderBy('document.created_at', 'desc')
            .orderBy('document.id')
            .execute()
        : summaries(kysely)
            .where('document.deleted_at', 'is not', null)
            .orderBy('document.deleted_at', 'desc')
            .orderBy('document.id')
            .execute(),
    save: async ({ transaction, note }, id, basedOn, { write, isKept }, at) => {
      if (await takeTurn(transaction, id, basedOn, at)) {
        const before = await transaction
          .selectFrom('document_revision')
          .select('content')
          .where('shop', '=', shop)
          .where('kind', '=', kind)
          .where('id', '=', id)
          .where('number', '=', basedOn)
          .executeTakeFirst();
        const written = write(before?.content);
        const saved = { number: basedOn + 1, saved_at: at, saved_by: desk.who.name };
        await transaction
          .insertInto('document_revision')
          .values({ shop, kind, id, ...saved, ...written })
          .execute();
        note({
          act: 'save',
          kind,
          thing: id,
          before: basedOn === 0 ? null : String(basedOn),
          after: String(basedOn + 1),
          content: contentHash(written.content),
        });
      }
      const now = await find(transaction, id);
      return now?.number === basedOn + 1 && isKept(now.content)
        ? { ok: true, document: now }
        : { ok: false, newer: now };
    },
    revisions: (kysely, id) => revisionsOf(kysely, id).orderBy('document_revision.number', 'desc').execute(),
    revision: (kysely, id, number) =>
      revisionsOf(kysely, id)
        .select('document_revision.content')
        .where('document_revision.number', '=', number)
        .executeTakeFirst(),
    bin: async ({ transaction, note }, id, at) => {
      const { numUpdatedRows } = await heads(transaction, id)
        .set({ deleted_at: at })
        .where('deleted_at', 'is', null)
        .executeTakeFirst();
      if (numUpdatedRows > 0n) note({ act: 'bin', kind, thing: id });
      return numUpdatedRows > 0n;
    },
    restore: async ({ transaction, note }, id) => {
      const { numUpdatedRows } = await heads(transaction, id)
        .set({ deleted_at: null })
        .where('deleted_at', 'is not', null)
        .executeTakeFirst();
      if (numUpdatedRows > 0n) note({ act: 'restore', kind, thing: id });
      return numUpdatedRows > 0n;
    },
    erase: async ({ transaction, note }, id) => {
      let erased = false;
      for (const table of ['document_revision', 'document'] as const) {
        const { numDeletedRows } = await transaction
          .deleteFrom(table)
          .where('shop', '=', shop)
          .where('kind', '=', kind)
          .where('id', '=', id)
          .executeTakeFirst();
        erased = numDeletedRows > 0n;
      }
      if (erased) note({ act: 'erase', kind, thing: id });
      return erased;
    },
    eraseEarlier: async ({ transaction, note }, id) => {
      const now = await find(transaction, id);
      if (now === undefined) return undefined;
      const { numDeletedRows } = await transaction
        .deleteFrom('document_revision')
        .where('shop', '=', shop)
        .where('kind', '=', kind)
        .where('id', '=', id)
        .where('number', '<', now.number)
        .executeTakeFirst();
      if (numDeletedRows > 0n) note({ act: 'erase earlier', kind, thing: id, after: String(now.number) });
      return Number(numDeletedRows);
    },
  };
}

/** A save of just this content. */
export function writingOf(content: DocumentContent): Writing {
  return { write: () => content, isKept: (kept) => kept === content.content };
}
