import type { Originals, Store } from '@furrow/store';
import { LiveRuns } from '../run/live-runs.ts';
import { openReviewer } from '../run/reviewer.ts';
import type { Work } from '../work/open-work.ts';
import type { ServedShop } from './served-shop.ts';

/** What a shop is opened with. */
export interface ShopParts {
  readonly id: string;
  readonly store: Store;
  readonly originals: Originals;
  readonly work: Work;
  /** Threads for what nobody waits for. */
  readonly background: Work;
  readonly log: (message: string) => void;
  readonly now: () => Date;
}

/** A shop with its live runs and its reviews. */
export interface OpenedShop {
  readonly served: ServedShop;
  /** Goes on with what was under way when the program ended. */
  readonly start: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** Opens what runs for a shop; nothing runs before it is started. */
export function openShop({ id, store, originals, work, background, log, now }: ShopParts): OpenedShop {
  const reviewer = openReviewer({ store, originals, background, log });
  const live = new LiveRuns({ store, originals, work, log, now, ended: reviewer.look });
  return {
    served: { id, store, originals, reviewer, live },
    start: async () => {
      await live.resume();
      reviewer.look();
    },
    close: async () => {
      await live.close();
      await reviewer.close();
    },
  };
}
