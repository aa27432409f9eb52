import type { ListedPaper } from '@furrow/contract';

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Whether a paper was handed out, and from which revision. */
export function printedWords({ page, printed, wanting }: Omit<ListedPaper, 'file' | 'title'>): string {
  const done = page === null ? 'downloaded' : 'printed';
  if (printed === null) return wanting === null ? `not ${done} yet` : `not yet: ${wanting}`;
  const by = printed.released_by === null ? '' : ` by ${printed.released_by}`;
  return `${done}${by} at revision ${printed.revision_number}, ${WHEN.format(new Date(printed.printed_at))}`;
}

/** What has changed since papers were printed, once for each revision that they were printed at. */
export function changesOf(papers: readonly ListedPaper[]): readonly {
  readonly revision: number;
  readonly papers: readonly string[];
  readonly changes: readonly string[];
}[] {
  const found = new Map<string, { revision: number; papers: string[]; changes: readonly string[] }>();
  for (const { title, printed } of papers) {
    if (printed === null || !printed.superseded) continue;
    const key = JSON.stringify([printed.revision_number, printed.changes]);
    const known = found.get(key);
    if (known === undefined)
      found.set(key, { revision: printed.revision_number, papers: [title], changes: printed.changes });
    else known.papers.push(title);
  }
  return [...found.values()];
}
