import type { PrintedRow } from '../database/tables.ts';
import { contentHash } from './change.ts';

/** What the history holds of a paper that was handed out. */
export function printedHash(row: Omit<PrintedRow, 'shop' | 'id'>): string {
  const { job_id, paper, revision_number, revision, kit_revision, knowledge_id } = row;
  const of = [job_id, paper, revision_number, revision, kit_revision, knowledge_id];
  return contentHash(JSON.stringify([...of, row.printed_at, row.released_by]));
}

/** What the history holds of a fault that was found. */
export function faultHash({
  cause,
  symptoms,
}: {
  readonly cause: string;
  readonly symptoms: string;
}): string {
  return contentHash(JSON.stringify([cause, symptoms]));
}

/** Rights as the history holds them: shops in one order, whatever the order they were given in. */
export function rightsText(rights: {
  readonly administrator: boolean;
  readonly shut: boolean;
  readonly shops: Readonly<Record<string, string>>;
}): string {
  const { administrator, shut } = rights;
  const shops = Object.fromEntries(Object.entries(rights.shops).sort(([a], [b]) => (a < b ? -1 : 1)));
  return JSON.stringify({ administrator, shut, shops });
}
