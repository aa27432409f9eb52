import type { KnowledgeName } from '../removal/index.ts';
import type { Effects } from './effects.ts';
import type { Learned, LevelsLearned } from './mixed-belief.ts';
import type { ShopObservation } from './observation.ts';
import type { ShopSummary } from './summary-schema.ts';

/** What a shop knows: its observations, and what was learned from them. */
export interface Knowledge {
  readonly name: KnowledgeName;
  /** Name of the shop in summaries. */
  readonly shop: string;
  /** What it was learned from, in the order of their days; entries taken out are not among them. */
  readonly observations: readonly ShopObservation[];
  /** Summaries of other shops that it was learned beside. */
  readonly others: readonly ShopSummary[];
  readonly depth: LearnedQuantity;
  readonly extraWidth: LearnedQuantity;
  readonly wear: LearnedQuantity;
}

/** One quantity as learned, with the columns of its coefficients. */
export interface LearnedQuantity {
  readonly learned: Learned;
  readonly effects: Effects;
  /** Spreads before anything of this shop was learned. */
  readonly starting: LevelsLearned;
}
