import type { Originals, Store } from '@furrow/store';
import { type OpenedShop, openShop, type ShopParts } from './open-shop.ts';
import type { ServedShop } from './served-shop.ts';

/** What the shops of a company are opened with. */
export interface ShopsParts extends Omit<ShopParts, 'id' | 'store' | 'originals'> {
  readonly storeOf: (id: string) => Store;
  readonly originalsOf: (id: string) => Originals;
}

/** The shops that are served; each is opened when it is first asked for. */
export interface Shops {
  readonly get: (id: string) => Promise<ServedShop>;
  /** Live runs that are gathered here [-]. */
  readonly liveRuns: () => number;
  readonly close: () => Promise<void>;
}

/** Serves shops by their identifiers, which have been looked up in the list of shops before. */
export function openShops({ storeOf, originalsOf, ...parts }: ShopsParts): Shops {
  const opened = new Map<string, { readonly shop: OpenedShop; readonly started: Promise<void> }>();
  return {
    get: async (id) => {
      const known = opened.get(id);
      if (known !== undefined) return known.started.then(() => known.shop.served);
      const shop = openShop({ ...parts, id, store: storeOf(id), originals: originalsOf(id) });
      const started = shop.start();
      opened.set(id, { shop, started });
      // one that could not be started is opened anew when it is asked for again
      started.catch(() => opened.delete(id));
      await started;
      return shop.served;
    },
    liveRuns: () => [...opened.values()].reduce((sum, { shop }) => sum + shop.served.live.count, 0),
    close: async () => {
      await Promise.all([...opened.values()].map(({ shop }) => shop.close()));
    },
  };
}
