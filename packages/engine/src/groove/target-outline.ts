import type { Job } from '../job/index.ts';
import type { SectionPoint } from './circle-fit.ts';

/** Points along one corner of the outline. */
const CORNER_POINTS = 24;
/** Slope of a pocket's run-outs: length per depth [-] (judgement, no source). */
const RUN_OUT_SLOPE = 4;

/** Which outline: as wanted, the shallowest and narrowest accepted, or the deepest and widest accepted. */
export type OutlineKind = 'wanted' | 'least' | 'most';

/**
 * Outline of the wanted groove across the seam, from the left shoulder over the root to the right one.
 *
 * A U without a floor width is a circular bottom with vertical walls, or a circular segment where it is
 * shallower than half its width; with a floor width it is flat there, with rounded corners out to the walls.
 *
 * @param groove - the groove of the job [record], from `readJob`
 * @param which - which outline [text], wanted, least or most
 * @returns the points [list]
 * @source geometry
 * @example
 * targetOutline({ shape: 'u', depth: { wanted: 0.01, plus: 0, minus: 0 }, width: { least: 0.016, most: 0.016 }, floor_width: 0 }, 'wanted')[0] // => {"offset":-0.008,"depth":0}
 */
export function targetOutline(
  groove: Pick<Job['groove'], 'shape' | 'depth' | 'width' | 'floor_width'>,
  which: OutlineKind,
): readonly SectionPoint[] {
  const depth =
    groove.depth.wanted + { wanted: 0, least: -groove.depth.minus, most: groove.depth.plus }[which];
  const width = {
    wanted: (groove.width.least + groove.width.most) / 2,
    least: groove.width.least,
    most: groove.width.most,
  }[which];
  const half = width / 2;
  const floor = Math.min(groove.floor_width, width) / 2;
  const run = half - floor;
  const rise = Math.min(depth, run);
  const right: SectionPoint[] = [];
  for (let step = 0; step <= CORNER_POINTS; step += 1) {
    const part = step / CORNER_POINTS;
    if (depth < run && floor === 0) {
      const radius = (half * half + depth * depth) / (2 * depth);
      const offset = half * part;
      right.push({ offset, depth: depth - (radius - Math.sqrt(radius * radius - offset * offset)) });
    } else {
      const angle = (part * Math.PI) / 2;
      right.push({ offset: floor + run * Math.sin(angle), depth: depth - rise * (1 - Math.cos(angle)) });
    }
  }
  const top = right.at(-1)!;
  if (top.depth > 0) right.push({ offset: half, depth: 0 });
  if (top.depth < 0 || Math.abs(top.depth) < 1e-12) right[right.length - 1] = { offset: half, depth: 0 };
  const left = right.map((point) => ({ offset: -point.offset, depth: point.depth })).reverse();
  return floor === 0 ? [...left.slice(0, -1), ...right] : [...left, ...right];
}

/**
 * Length of the run-out at each end: a pocket rises to the surface over it; other shapes have none.
 *
 * @param groove - the groove of the job [record], from `readJob`
 * @returns length of one run-out [m]
 * @source judgement, no source: four times the depth
 * @example
 * runOutLength({ shape: 'pocket', depth: { wanted: 0.006, plus: 0, minus: 0 } }) // => 0.024
 */
export function runOutLength(groove: Pick<Job['groove'], 'shape' | 'depth'>): number {
  return groove.shape === 'pocket' ? RUN_OUT_SLOPE * groove.depth.wanted : 0;
}
