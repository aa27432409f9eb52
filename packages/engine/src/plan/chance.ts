import type { RunOutcomes } from './run-plan.ts';

/** What the groove must keep to, and how surely. */
export interface DepthDemand {
  /** Least depth everywhere in the zone [m]. */
  readonly least: number;
  /** Greatest depth anywhere [m]. */
  readonly most: number;
  /** Greatest depth that keeps the least ligament [m]. */
  readonly mostForLigament: number;
  /** Width band at the surface [m]. */
  readonly width: { readonly least: number; readonly most: number };
  /** Chance wanted for reaching and for not exceeding the depth, and for the width [-]. */
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
  /** Width in its band everywhere [-]. */
  readonly widthInBand: number;
  /** All of them in the same shop [-]. */
  readonly joint: number;
  /** Standard error of the chance that is known least well [-]. */
  readonly standardError: number;
}

/** Counts in which share of the shops each demand is met. */
export function chancesOf(outcomes: RunOutcomes, demand: DepthDemand): Chances {
  const { deepest, shallowest, widthLeast, widthMost, notRun } = outcomes;
  const count = deepest.length;
  let [reached, notTooDeep, ligamentKept, widthInBand, joint] = [0, 0, 0, 0, 0];
  for (let shop = 0; shop < count; shop += 1) {
    const deep = shallowest[shop]! >= demand.least && notRun[shop] === 0;
    const shallow = deepest[shop]! <= demand.most;
    const kept = deepest[shop]! <= demand.mostForLigament;
    // Where nothing was cut there is no width to miss: the depth counts that shop already.
    const wide =
      notRun[shop] === 1 ||
      (widthLeast[shop]! >= demand.width.least && widthMost[shop]! <= demand.width.most);
    if (deep) reached += 1;
    if (shallow) notTooDeep += 1;
    if (kept) ligamentKept += 1;
    if (wide) widthInBand += 1;
    if (deep && shallow && kept && wide) joint += 1;
  }
  const shares = [reached, notTooDeep, ligamentKept, widthInBand, joint].map((each) => each / count);
  // A chance of which no miss was seen is held to one miss.
  const error = (share: number): number => {
    const held = Math.min(1 - 1 / count, Math.max(1 / count, share));
    return Math.sqrt((held * (1 - held)) / count);
  };
  return {
    reached: shares[0]!,
    notTooDeep: shares[1]!,
    ligamentKept: shares[2]!,
    widthInBand: shares[3]!,
    joint: shares[4]!,
    standardError: Math.max(...shares.map(error)),
  };
}

/** Rounding by which a count that just meets a chance may seem to miss it [-]. */
const ROUNDING = 1e-12;

/** What is short of its wanted chance, the largest shortfall; 0 or less: every demand is met. */
export function shortfall(chances: Chances, demand: DepthDemand): number {
  const largest = Math.max(
    demand.assurance - chances.reached,
    demand.assurance - chances.notTooDeep,
    demand.assurance - chances.widthInBand,
    demand.ligamentAssurance - chances.ligamentKept,
  );
  return Math.abs(largest) < ROUNDING ? 0 : largest;
}
