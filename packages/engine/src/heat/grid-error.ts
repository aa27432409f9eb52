import { cellAt } from './axis.ts';
import type { FloorLine } from './floor-line.ts';
import type { SectionHeat } from './section-heat.ts';

/** Distances from the groove at which two grids are compared [m]. */
const DISTANCES = [1.5e-3, 3e-3, 5e-3, 8e-3];
/**
 * Order counted upon beside a groove: the scheme is of second order, but cells cut by the floor make it less there;
 * halving the cells was seen to leave between a fifth and a half of the difference. So the whole of it is stated.
 */
const ORDER = 1;

/** Peak temperature at a place, straight between the middles of cells [K]. */
function peakAt(heat: SectionHeat, offset: number, depth: number): number {
  const columns = heat.across.length;
  const place = (middles: Float64Array, at: number): [number, number] => {
    const low = Math.min(
      middles.length - 2,
      cellAt({ edges: middles, centres: middles, widths: middles }, at),
    );
    return [low, Math.min(1, Math.max(0, (at - middles[low]!) / (middles[low + 1]! - middles[low]!)))];
  };
  const [i, x] = place(heat.across, offset);
  const [j, y] = place(heat.below, depth);
  const at = (column: number, row: number): number => heat.peak[row * columns + column]!;
  return (
    (1 - y) * ((1 - x) * at(i, j) + x * at(i + 1, j)) + y * ((1 - x) * at(i, j + 1) + x * at(i + 1, j + 1))
  );
}

/** Estimated error of the finer grid's peak temperatures, over their rise, at the worst of places by the groove [-]. */
export function gridErrorOf(coarse: SectionHeat, fine: SectionHeat, floor: FloorLine, start: number): number {
  const lowest = floor.reduce((most, point) => (point.depth > most.depth ? point : most), {
    offset: 0,
    depth: 0,
  });
  const left = Math.min(0, ...floor.map(({ offset }) => offset));
  const right = Math.max(0, ...floor.map(({ offset }) => offset));
  const thickness = fine.below.at(-1)!;
  const places = DISTANCES.flatMap((distance) => [
    [lowest.offset, Math.min(thickness, lowest.depth + distance)],
    [left - distance, lowest.depth / 3],
    [right + distance, lowest.depth / 3],
  ]) as [number, number][];
  const errors = places.map(([offset, depth]) => {
    const rise = peakAt(fine, offset, depth) - start;
    const gap = Math.abs(peakAt(fine, offset, depth) - peakAt(coarse, offset, depth));
    return rise > 1 ? gap / (2 ** ORDER - 1) / rise : 0;
  });
  return Math.max(0, ...errors.filter(Number.isFinite));
}
