import type { Limit } from '../limit/index.ts';
import { inUnit, type Sentence, type StatedUnit } from '../quantity/index.ts';
import type { Chances, DepthDemand } from './chance.ts';

/** The closest miss of one constraint over all that was tried. */
export interface Miss {
  readonly constraint: string;
  readonly title: string;
  /** What was asked, in `unit`. */
  readonly demand: number;
  /** What there is, in `unit`. */
  readonly limit: number;
  readonly unit: StatedUnit;
  readonly remedy: Sentence;
  /** Relative size of the miss [-]. */
  readonly size: number;
}

/** Takes note of a miss. */
export type MissNote = (miss: Miss) => void;

/** A hard limit that fails, as a miss. */
export function missOf(limit: Limit): Miss {
  const scale = Math.max(Math.abs(limit.capacity), Math.abs(limit.demand), 1e-12);
  return {
    constraint: limit.id,
    title: limit.title,
    demand: limit.demand,
    limit: limit.capacity,
    unit: limit.unit,
    // worked out only for the misses that are told
    get remedy() {
      return limit.remedy;
    },
    size: Math.abs(limit.demand - limit.capacity) / scale,
  };
}

/** Notes which chances are short of what is wanted. */
export function missChance(chances: Chances, demand: DepthDemand, shortfall: number, miss: MissNote): void {
  const rows = [
    ['depth_reached', 'Chance that the depth is reached', demand.assurance, chances.reached],
    ['not_too_deep', 'Chance that no point is too deep', demand.assurance, chances.notTooDeep],
    ['width_in_band', 'Chance that the width lies in its band', demand.assurance, chances.widthInBand],
    ['ligament_kept', 'Chance that the ligament is kept', demand.ligamentAssurance, chances.ligamentKept],
  ] as const;
  for (const [constraint, title, wanted, got] of rows) {
    if (got >= wanted) continue;
    // The size is the whole set-up's shortfall, so that a plan that nearly works is named before one that fails one side only.
    miss({
      constraint,
      title,
      demand: inUnit(wanted, '%'),
      limit: inUnit(got, '%'),
      unit: '%',
      remedy: 'a wider tolerance',
      size: shortfall,
    });
  }
}
