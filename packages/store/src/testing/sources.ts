import type { StoreSources } from '../job/sql-job-store.ts';

/** A clock that goes one second further at each look, and identifiers that count. */
export function countingSources(): StoreSources {
  let seconds = 0;
  let ids = 0;
  return {
    now: () => new Date(Date.UTC(2026, 0, 5, 6, 0, seconds++)),
    newId: () => `00000000-0000-4000-8000-${String(++ids).padStart(12, '0')}`,
  };
}
