import { arcHeight, heightAt, passArea, passWidth, WALL_FLARE } from '../groove/index.ts';
import type { Effort } from './effort.ts';
import type { Pattern } from './pattern.ts';
import type { RunOutcomes } from './run-plan.ts';

/** The groove that is left behind, as the work after the arc asks for it. */
export interface GrooveLeft {
  /** Area of the section: volume per length of seam [m2]. */
  readonly areaPerLength: number;
  /** Width at the plate's surface [m]. */
  readonly topWidth: number;
  /** Depth of its deepest point [m]. */
  readonly depth: number;
  /** Length of the seam [m]. */
  readonly seamLength: number;
}

/** Money and time for everything beside the arc, from the groove left behind; handed in, as rooms below know prices. */
export type AfterCostFunction = (groove: GrooveLeft) => { readonly cost: number; readonly time: number };

/** Shops for which the cost of what comes after the arc is worked out, at most [-]. */
const PRICED_MOST = 2048;

/** Every so many shops one is priced [-]. */
function strideOf(shops: number): number {
  return Math.max(1, Math.ceil(shops / PRICED_MOST));
}

/** Of values of every so many shops, as `wholeCosts` gives them, those of the shops in which the seam was run. */
export function costsWhereRun(costs: Float64Array, notRun: Uint8Array): Float64Array {
  const stride = Math.round(notRun.length / costs.length);
  const kept = new Float64Array(costs.length);
  let count = 0;
  for (let index = 0; index < costs.length; index += 1) {
    if (notRun[index * stride] === 1) continue;
    kept[count] = costs[index]!;
    count += 1;
  }
  return kept.subarray(0, count);
}

/** Cost of the whole job in a part of the shops, the work beside the arc at its usual durations. */
export function wholeCosts(
  effort: Effort,
  outcomes: RunOutcomes,
  pattern: Pattern,
  seamLength: number,
  afterCost: AfterCostFunction,
): Float64Array {
  const stride = strideOf(effort.cost.length);
  const costs = new Float64Array(Math.ceil(effort.cost.length / stride));
  for (let i = 0; i < costs.length; i += 1) {
    const shop = i * stride;
    // Metal is filled in along the whole seam, so that its mean depth counts, not the deepest place.
    const depth = outcomes.depth[shop]!;
    const width = passWidthOf(outcomes.width[shop]! - (pattern.tracks - 1) * pattern.spacing, depth);
    costs[i] = effort.cost[shop]! + afterCost(grooveLeft(width, depth, pattern, seamLength)).cost;
  }
  return costs;
}

/** The groove that tracks of one nominal width and one depth leave side by side. */
export function grooveLeft(
  width: number,
  depth: number,
  { tracks, spacing }: Pattern,
  seamLength: number,
): GrooveLeft {
  if (depth <= 0) return { areaPerLength: 0, topWidth: 0, depth: 0, seamLength };
  const ridge = Math.min(heightAt(width / 2, spacing / 2), depth);
  // Between two tracks the floor rises from the bottom to the ridge, for a circle nearly as a parabola does.
  const between = spacing * (depth - ridge / 3);
  return {
    areaPerLength: passArea({ width, depth }) + (tracks - 1) * between,
    topWidth: passWidth({ width, depth }) + (tracks - 1) * spacing,
    depth,
    seamLength,
  };
}

/** Nominal width of a pass, from its width at the surface and its depth [m]: the inverse of `passWidth`. */
export function passWidthOf(surfaceWidth: number, depth: number): number {
  const half = surfaceWidth / 2;
  const segment = (half ** 2 + depth ** 2) / (2 * depth);
  if (depth <= arcHeight(segment)) return 2 * segment;
  const tangent = Math.tan(WALL_FLARE);
  return (2 * (half - depth * tangent)) / (Math.cos(WALL_FLARE) - (1 - Math.sin(WALL_FLARE)) * tangent);
}
