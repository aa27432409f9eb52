import type { DocumentRevision, RevisionSummary } from '../document/document-table.ts';
import type { StoredShopFile, StoredShopFileSummary } from './shop-file-store.ts';

/** One revision of a document as a line of its history. */
export function summaryOf({
  number,
  title,
  revision,
  saved_at,
  saved_by,
}: RevisionSummary): StoredShopFileSummary {
  return { title, revision, revision_number: number, saved_at, saved_by };
}

/** One revision of a document as a file. */
export function fileOf(revision: DocumentRevision | undefined): StoredShopFile | undefined {
  return revision && { ...summaryOf(revision), text: revision.content };
}
