import type { Job } from '../job/index.ts';
import type { LimitFunction } from '../limit/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import type { ShopDraws } from './shop-draws.ts';
import type { AfterCostFunction } from './whole-cost.ts';
import type { Work } from './work.ts';

/** What is searched, and with what. */
export interface SearchTask {
  readonly job: Job;
  readonly belief: RemovalBelief;
  readonly limits: readonly LimitFunction[];
  /** Shops in which ways are solved. */
  readonly draws: ShopDraws;
  /** A few shops in which hopeless ways are seen to be so. */
  readonly scouts: ShopDraws;
  /** More shops, in which what is told is solved for good. */
  readonly last: ShopDraws;
  /** Shops that have no part in solving: a set-up must keep its chances there too. */
  readonly fair: ShopDraws;
  /** Stop at the first plan that works: enough to know whether there is one. */
  readonly firstOnly: boolean;
  /** Search for the quickest too, and for what a person asks about beside the best. */
  readonly compared: boolean;
  /** Money for everything beside the arc; left out: the arc's side alone is weighed. */
  readonly afterCost: AfterCostFunction | undefined;
  /** Work that the search may do. */
  readonly work: Work;
}

/** The same with what the search has learned so far. */
export interface SearchInput extends SearchTask {
  /**
   * What a rig must not take more than to be worth a look, by each objective: the least that a way with room to spare
   * is forecast to take, which falls as the search goes on, or once that is known what was found.
   */
  readonly horizon: { time: number; cost: number; heat: number; found: boolean };
}
