import type { RunReport, Written } from '@furrow/engine';

type PlacedDepth = Written<RunReport>['depth'][number];

/** The depth predicted nearest to a place [mm]; undefined where none is. */
export function depthAt(depth: readonly PlacedDepth[], at: number): PlacedDepth | undefined {
  return depth.reduce<PlacedDepth | undefined>(
    (best, each) =>
      best === undefined || Math.abs(each.at_mm - at) < Math.abs(best.at_mm - at) ? each : best,
    undefined,
  );
}
