import type { KitElectrode } from '../job/index.ts';
import type { Source } from '../limit/index.ts';
import { INCH } from '../quantity/index.ts';

/** Current range of an electrode, with where it comes from. */
export interface CurrentRange {
  /** Least current [A]. */
  readonly least: number;
  /** Greatest current [A]. */
  readonly most: number;
  readonly source: Source;
}

/** How far a metric size may lie from the inch size it goes by, such as 10 mm and 3/8 in [m]. */
const SIZE_TOLERANCE = 0.5e-3;

/** Diameter [m] and suggested range [A] of copper-coated DC electrodes. */
const PUBLISHED: readonly (readonly [number, number, number])[] = [
  [(5 / 32) * INCH, 90, 150],
  [(3 / 16) * INCH, 150, 200],
  [(1 / 4) * INCH, 200, 400],
  [(5 / 16) * INCH, 250, 450],
  [(3 / 8) * INCH, 350, 600],
  [(1 / 2) * INCH, 600, 1000],
  [(5 / 8) * INCH, 800, 1200],
  [(3 / 4) * INCH, 1200, 1600],
  [1 * INCH, 1800, 2200],
];

const SOURCE: Source = {
  text: 'AWS Welding Handbook, arc cutting and gouging chapter, suggested current ranges',
  provenance: 'memory',
};

/**
 * Current range of an electrode: the shop's own where the kit states it, else the published one for its size.
 *
 * A metric size goes by the inch size nearest to it; one that is far from any has no range unless the kit gives both ends.
 *
 * @param electrode - the kit's entry [record], from `readJob`
 * @returns the range, or undefined for a size without one [A]
 * @source AWS Welding Handbook, suggested current ranges (memory)
 * @example
 * currentRangeOf({ diameter: 0.0127 }).most // => 1000
 */
export function currentRangeOf(
  electrode: Pick<KitElectrode, 'diameter' | 'current_least' | 'current_most'>,
): CurrentRange | undefined {
  const row = publishedRow(electrode.diameter);
  const least = electrode.current_least ?? row?.[1];
  const most = electrode.current_most ?? row?.[2];
  if (least === undefined || most === undefined) return undefined;
  const own = electrode.current_least !== undefined || electrode.current_most !== undefined;
  return {
    least,
    most,
    source: own ? { text: "the kit's own range for this electrode", provenance: 'job file' } : SOURCE,
  };
}

/** The row of the published size nearest to a diameter, within the tolerance. */
function publishedRow(diameter: number): (typeof PUBLISHED)[number] | undefined {
  const away = ([size]: (typeof PUBLISHED)[number]): number => Math.abs(size - diameter);
  const nearest = PUBLISHED.reduce((best, row) => (away(row) < away(best) ? row : best));
  return away(nearest) <= SIZE_TOLERANCE ? nearest : undefined;
}
