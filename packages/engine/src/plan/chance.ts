import type { RunOutcomes } from './run-plan.ts';

/** What the depth must keep to, and how surely. */
export interface DepthDemand {
  /** Least depth everywhere in the zone [m]. */
  readonly least: number;
  /** Greatest depth anywhere [m]. */
  readonly most: number;
  /** Greatest depth that keeps the least ligament [m]. */
  readonly mostForLigament: number;
  /** Width band at the surface [m]. */
  readonly width: { readonly least: number; readonly most: number };
  /** Chance wanted for reaching and for not exceeding the depth [-]. */
  readonly assurance: number;
  /** Chance wanted for keeping the ligament [-]. */
  readonly ligamentAssurance: number;
}

/** Chances counted over the shops. */
export interface Chances {
  /** Depth reached everywhere it must [-]. */
  readonly reached: number;
  /** No point too deep [-]. */
  readonly notTooDeep: number;
  /** Ligament kept [-]. */
  readonly ligamentKept: number;
  /** Width in its band [-]. */
  readonly widthInBand: number;
}

/** Counts in which share of the shops each demand is met. */
export function chancesOf(outcomes: RunOutcomes, demand: DepthDemand): Chances {
  const { deepest, shallowest, width } = outcomes;
  let reached = 0;
  let notTooDeep = 0;
  let ligamentKept = 0;
  let widthInBand = 0;
  for (let shop = 0; shop < deepest.length; shop += 1) {
    if (shallowest[shop]! >= demand.least) reached += 1;
    if (deepest[shop]! <= demand.most) notTooDeep += 1;
    if (deepest[shop]! <= demand.mostForLigament) ligamentKept += 1;
    if (width[shop]! >= demand.width.least && width[shop]! <= demand.width.most) widthInBand += 1;
  }
  const count = deepest.length;
  return {
    reached: reached / count,
    notTooDeep: notTooDeep / count,
    ligamentKept: ligamentKept / count,
    widthInBand: widthInBand / count,
  };
}

/** Rounding by which a count that just meets a chance may seem to miss it [-]. */
const ROUNDING = 1e-12;

/** What is short of its wanted chance, the largest shortfall; 0 or less: every demand is met. */
export function shortfall(chances: Chances, demand: DepthDemand): number {
  const largest = Math.max(
    demand.assurance - chances.reached,
    demand.assurance - chances.notTooDeep,
    demand.ligamentAssurance - chances.ligamentKept,
  );
  return Math.abs(largest) < ROUNDING ? 0 : largest;
}

/** Whether the depth is reached as surely as wanted. */
export function reachesDepth(chances: Chances, demand: DepthDemand): boolean {
  return chances.reached >= demand.assurance - ROUNDING;
}
