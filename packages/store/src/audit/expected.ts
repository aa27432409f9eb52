import type { Entry } from '../history/change.ts';

/** What a history says that there is of one thing. */
export interface ExpectedThing {
  /** SHA-256 of what is kept; null where nothing is, or no history tells. */
  readonly content: string | null;
  readonly after: string | null;
}

/** What a history says that there is. */
export interface Expected {
  /** Of each document, by kind and identifier: each revision's content and who saved it. */
  readonly revisions: Map<
    string,
    Map<number, { readonly content: string | null; readonly by: string | null }>
  >;
  /** Everything else, by kind and identifier. */
  readonly things: Map<string, ExpectedThing>;
  /** Hash of what is kept of each password. */
  readonly passwords: Map<string, string | null>;
}

const DOCUMENTS: ReadonlySet<string> = new Set([
  'job',
  'kit',
  'rig',
  'knowledge',
  'gauge',
  'readings',
  'logger',
]);

export function nothingExpected(): Expected {
  return { revisions: new Map(), things: new Map(), passwords: new Map() };
}

/** What is known by kind and identifier. */
export function keyOf(kind: string, thing: string): string {
  return `${kind} ${thing}`;
}

/** Takes an entry into account. */
export function expect({ revisions, things, passwords }: Expected, entry: Entry): void {
  const { act, kind, thing, after, content, who } = entry;
  const key = keyOf(kind, thing);
  if (act === 'erase') {
    revisions.delete(key);
    things.delete(key);
  } else if (DOCUMENTS.has(kind)) {
    const known = revisions.get(key) ?? new Map();
    revisions.set(key, known);
    if (act === 'save' || act === 'kept before') known.set(Number(after), { content, by: who.name });
    if (act === 'erase earlier')
      for (const number of known.keys()) if (number < Number(after)) known.delete(number);
  } else {
    if (kind === 'account' && content !== null) passwords.set(thing, content);
    if (act === 'set password' || act === 'link' || act === 'sign out') return;
    const before = things.get(key);
    things.set(key, { content: content ?? before?.content ?? null, after: after ?? before?.after ?? null });
  }
}
