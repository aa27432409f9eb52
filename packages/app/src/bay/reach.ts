import type { BayReport, PlaceReport, PointReport, RouteReport } from '@furrow/engine';
import type { BayReach } from '@furrow/papers/drawing';

/** Places closer than this are one [m]. */
const SAME = 0.02;

/**
 * How far the picked leads and hoses reach in a straight line: the lead that follows the carriage from the station,
 * and the hose from the air drop. What is left over beyond the way is counted no better than the way itself.
 */
export function reaches(place: PlaceReport): readonly BayReach[] {
  const station = place.station?.at_m;
  if (station === undefined) return [];
  return place.routes.flatMap((route): BayReach[] => {
    const [start, end] = [route.path_m[0], route.path_m.at(-1)];
    if (start === undefined || end === undefined || !(route.needed_m > 0)) return [];
    const far = isSame(start, station) ? end : start;
    const post = postAt(place.bay, far);
    const follows = route.kind === 'electrode lead' && post === undefined;
    const hose = route.kind === 'air hose' && post === 'air';
    if (!follows && !hose) return [];
    const radius = lengthOf(route) * (route.picked_m / route.needed_m);
    return [{ name: route.name, from: follows ? station : far, radius }];
  });
}

/** Length of a way along its corners [m]. */
export function lengthOf({ path_m }: Pick<RouteReport, 'path_m'>): number {
  return path_m.slice(1).reduce((sum, point, index) => sum + distance(path_m[index]!, point), 0);
}

function postAt(bay: BayReport, point: PointReport): 'power' | 'air' | undefined {
  return bay.posts.find((post) => isSame(post.at_m, point))?.kind;
}

function isSame(one: PointReport, other: PointReport): boolean {
  return distance(one, other) < SAME;
}

function distance(one: PointReport, other: PointReport): number {
  return Math.hypot(one.x_m - other.x_m, one.y_m - other.y_m);
}
