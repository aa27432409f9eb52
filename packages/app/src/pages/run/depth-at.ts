import { inUnit, type RunReport, type Written } from '@furrow/engine';

type PlacedDepth = Written<RunReport>['depth'][number];

/** The depth predicted nearest to a place along the seam [m]; undefined where none is. */
export function depthAt(depth: readonly PlacedDepth[], place: number): PlacedDepth | undefined {
  const at = inUnit(place, 'mm');
  return depth.reduce<PlacedDepth | undefined>(
    (best, each) =>
      best === undefined || Math.abs(each.at_mm - at) < Math.abs(best.at_mm - at) ? each : best,
    undefined,
  );
}
