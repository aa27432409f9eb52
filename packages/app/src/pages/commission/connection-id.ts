import type { Connection } from '@furrow/engine';

/** Longest identifier that is kept [-]. */
const LONGEST = 120;

/** Names a connection by what it is, so that a tick stays with it when others come or go. */
export function connectionId({ kind, name, from, to }: Connection): string {
  return [kind, name, from, to].join('/').slice(0, LONGEST);
}
