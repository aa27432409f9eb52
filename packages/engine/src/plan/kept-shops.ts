import type { RemovalBelief } from '../removal/index.ts';
import { drawShops, type ShopDraws } from './shop-draws.ts';

/** Sets of shops kept [-]: those of a plan, of a refusal, and of the belief before. */
const KEPT_MOST = 12;
const kept = new Map<string, ShopDraws>();

/**
 * The shops of a belief, a count and a seed, kept from the last plans: who edits a job meets the same shops at every
 * edit, and drawing them takes longer than many a search. What is kept is what would be drawn anew.
 */
export function shopsOf(belief: RemovalBelief, count: number, seed: number): ShopDraws {
  const key = JSON.stringify([belief.depth, belief.extraWidth, belief.wear, belief.seamRange, count, seed]);
  const shops = kept.get(key) ?? drawShops(belief, count, seed);
  // The one used last goes to the end, so that the first is the one not used for longest.
  kept.delete(key);
  kept.set(key, shops);
  if (kept.size > KEPT_MOST) kept.delete(kept.keys().next().value!);
  return shops;
}
