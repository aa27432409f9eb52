import { createHash } from 'node:crypto';

/** Who changes something: a person, a machine, or nobody by name where nobody signs in. */
export interface Actor {
  /** Identifier of the account or the machine; null for the program itself and where nobody signs in. */
  readonly id: string | null;
  /** Name at that time; null where nobody signs in. */
  readonly name: string | null;
}

/** Whoever works where nobody signs in. */
export const NOBODY: Actor = { id: null, name: null };

/** What may be done to a thing, for the history. */
export type Act =
  | 'kept before'
  | 'add'
  | 'save'
  | 'bin'
  | 'restore'
  | 'erase'
  | 'erase earlier'
  | 'end'
  | 'release'
  | 'set'
  | 'set password'
  | 'link'
  | 'sign out';

/** What was changed, from what to what. */
export interface Change {
  readonly act: Act;
  /** What kind of thing, such as `job`, `kit` or `account`. */
  readonly kind: string;
  /** Which of them, by its identifier. */
  readonly thing: string;
  /** State before and after: the number of a revision, or what was set as JSON; null for none. */
  readonly before?: string | null;
  readonly after?: string | null;
  /** SHA-256 of what is kept of it; null where that is nothing. */
  readonly content?: string | null;
}

/** One entry of the history of a shop, or of the company: it holds the entry before it by its hash. */
export interface Entry extends Required<Change> {
  /** Shop; empty for what belongs to the company: people, shops, machines. */
  readonly shop: string;
  /** From 1, without a gap [-]. */
  readonly number: number;
  /** When (ISO 8601, UTC). */
  readonly at: string;
  readonly who: Actor;
  /** Hash of the entry before. */
  readonly previous: string;
}

/** What the first entry of a history holds in place of an entry before it. */
export const BEGINNING = '0'.repeat(64);

/** Chain of what belongs to the company rather than to a shop. */
export const COMPANY = '';

/** The hash of an entry. Its form is never changed: histories that were begun are held to it. */
export function entryHash(entry: Entry): string {
  const { shop, number, at, who, act, kind, thing, before, after, content, previous } = entry;
  return contentHash(
    JSON.stringify([
      'furrow history 1',
      ...[shop, number, at, who.id, who.name, act, kind, thing, before, after, content, previous],
    ]),
  );
}

/** SHA-256 of a text that is kept. */
export function contentHash(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
