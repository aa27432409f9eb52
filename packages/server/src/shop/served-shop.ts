import type { Originals, Store } from '@furrow/store';
import type { LiveRuns } from '../run/live-runs.ts';
import type { Reviewer } from '../run/reviewer.ts';

/** The shop that a request is about: what is kept of it, and what runs for it. Routes know no other way to a store. */
export interface ServedShop {
  readonly id: string;
  readonly store: Store;
  /** Files of its runs. */
  readonly originals: Originals;
  readonly reviewer: Reviewer;
  readonly live: LiveRuns;
}

declare module 'fastify' {
  interface FastifyRequest {
    /** Set by the one hook that lets requests in, and by nothing else. */
    shop: ServedShop;
  }
}
