import { type CutAgain, cutOf } from './fuse-pieces.ts';
import { type SeamReading, type SeamSpread, seamStates } from './seam-states.ts';

/** One weighted set of the spreads that a seam may have. */
export interface SeamSpreadNode {
  /** Share of the node; the shares add up to 1 [-]. */
  readonly weight: number;
  readonly spread: SeamSpread;
}

/** Readings that the spreads are learned from at most, evenly chosen [-]. */
const READINGS_MOST = 200;

/**
 * The spreads of a seam as the readings leave them: each node weighed by how likely it makes the readings, and the
 * variances averaged.
 *
 * Each cut is a process of its own; all share the spreads.
 *
 * @param nodes - the spreads as they may be [list], at least one, course and range > 0
 * @param readings - readings less the prediction [list], each with a standard deviation > 0
 * @param recuts - stretches that were cut again [list], in the order of the work
 * @returns the spreads in the middle [record]
 * @source Bayes' theorem over a fixed set of nodes; moments matched
 * @example
 * const nodes = [0.01, 0.1].map((course) => ({ weight: 0.5, spread: { common: 0.1, course, range: 0.25 } }));
 * const readings = [0.08, -0.1, 0.09, -0.07].map((value, i) => ({ at: i, value, sd: 0.01 }));
 * spreadAfter(nodes, readings, []).course // => 0.1
 */
export function spreadAfter(
  nodes: readonly SeamSpreadNode[],
  readings: readonly SeamReading[],
  recuts: readonly CutAgain[],
): SeamSpread {
  const stride = Math.max(1, Math.ceil(readings.length / READINGS_MOST));
  const chosen = [...readings].sort((a, b) => a.at - b.at).filter((_, i) => i % stride === 0);
  const byCut = new Map<number, SeamReading[]>();
  for (const reading of chosen) {
    const cut = cutOf(reading.at, recuts);
    byCut.set(cut, [...(byCut.get(cut) ?? []), reading]);
  }
  const pieces = [...byCut.values()];
  const likely = nodes.map(({ spread }) =>
    pieces.reduce((sum, piece) => sum + seamStates(spread, piece, []).lnDensity, 0),
  );
  const most = Math.max(...likely);
  const weights = nodes.map(({ weight }, i) => weight * Math.exp(likely[i]! - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (spread: SeamSpread) => number): number =>
    nodes.reduce((sum, { spread }, i) => sum + weights[i]! * of(spread), 0) / total;
  return {
    common: Math.sqrt(mean(({ common }) => common ** 2)),
    course: Math.sqrt(mean(({ course }) => course ** 2)),
    range: nodes[0]!.spread.range,
  };
}
