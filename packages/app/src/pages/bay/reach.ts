import type { PlaceReport } from '@furrow/engine';
import type { BayReach } from '@furrow/papers/drawing';

/** How far lead and hose reach from the station in a straight line: past the farthest point of the seam by the margin. */
export function reachOf({ bay, station }: PlaceReport): readonly BayReach[] {
  if (station === null) return [];
  const { at_m: from } = station;
  const farthest = Math.max(
    0,
    ...bay.seam_m.map((point) => Math.hypot(point.x_m - from.x_m, point.y_m - from.y_m)),
  );
  return [{ name: 'lead and hose together', from, radius: farthest + station.reach_margin_m }];
}
