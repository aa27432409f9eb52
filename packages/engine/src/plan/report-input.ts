import type { Job } from '../job/index.ts';
import type { LimitFunction } from '../limit/index.ts';
import type { RemovalBelief } from '../removal/index.ts';
import type { ShopDraws } from './shop-draws.ts';

/** What a plan is written out from. */
export interface ReportInput {
  readonly job: Job;
  readonly belief: RemovalBelief;
  readonly limits: readonly LimitFunction[];
  /** Shops that had no part in solving, those that the set-up's chances are counted in. */
  readonly draws: ShopDraws;
}
