import type { ContourPoint } from './contour-rings.ts';
import type { DrawingPoint, Mark } from './drawing.ts';
import { HEAT_ROLES, type HeatLevel } from './heat-levels.ts';

/** Area inside a ring; negative for a hole. */
function ringArea(ring: readonly DrawingPoint[]): number {
  let sum = 0;
  let previous = ring.at(-1);
  for (const point of ring) {
    if (previous !== undefined) sum += previous.x * point.y - point.x * previous.y;
    previous = point;
  }
  return sum / 2;
}

/** What is at least as hot as a level; a cooler hole in it takes the look of the level before. The largest comes first. */
export function heatAreas(rings: readonly (readonly ContourPoint[])[], index: number): Mark[] {
  const role = HEAT_ROLES[index] ?? 'heat-7';
  const cooler = HEAT_ROLES[index - 1] ?? 'plate';
  return rings
    .map((ring) => ({ ring, size: ringArea(ring) }))
    .sort((one, other) => Math.abs(other.size) - Math.abs(one.size))
    .map(({ ring, size }) => ({
      kind: 'area',
      role: size >= 0 ? role : cooler,
      points: ring.map(({ x, y }) => ({ x, y })),
    }));
}

/** The lines of a level, without what runs along the edge of the plate. */
export function isothermLines(rings: readonly (readonly ContourPoint[])[], role: HeatLevel['role']): Mark[] {
  return rings.flatMap((ring) => openParts(ring).map((points): Mark => ({ kind: 'polyline', role, points })));
}

function openParts(ring: readonly ContourPoint[]): DrawingPoint[][] {
  const start = ring.findIndex(({ rim }) => rim);
  // a ring that nowhere runs along the edge is one closed line
  if (start < 0) return [[...ring, ...ring.slice(0, 1)].map(({ x, y }) => ({ x, y }))];
  const parts: DrawingPoint[][] = [[]];
  for (let step = 1; step <= ring.length; step += 1) {
    const point = ring[(start + step) % ring.length];
    if (point === undefined) continue;
    if (point.rim) parts.push([]);
    else parts.at(-1)?.push({ x: point.x, y: point.y });
  }
  return parts.filter((part) => part.length > 1);
}
