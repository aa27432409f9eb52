import type { AreaReport, PlaceReport, PointReport, RouteReport, UnitSystem } from '@furrow/engine';
import type { ScaleDrawing, ScaleItem, ScaleLayer, ScalePoint } from './scale-drawing.ts';

/** Draws the bay in plan view at full size, from the bay's own origin. */
export function bayAtScale(place: PlaceReport, title: string, units: UnitSystem): ScaleDrawing {
  const { bay, station, routes } = place;
  const all = [...bay.outline_m, ...bay.seam_m, ...bay.workpiece.outline_m];
  const wide = Math.max(...all.map(({ x_m }) => x_m)) - Math.min(...all.map(({ x_m }) => x_m));
  const height = Math.max(0.02, wide / 90);
  return {
    title: `Bay in plan view: ${title}`,
    description: 'Full size, from the origin of the bay; x to the right and y up the plan.',
    units,
    textHeight: height,
    items: [
      outline('BAY', bay.outline_m),
      ...named(bay.workpiece, 'WORKPIECE', height),
      ...bay.obstacles.flatMap((area) => named(area, 'OBSTACLE', height)),
      ...bay.walkways.flatMap((area) => named(area, 'WALKWAY', height)),
      { kind: 'line', layer: 'SEAM', closed: false, points: bay.seam_m.map(at) },
      ...(bay.keep_out_m > 0 ? keepClear(bay.seam_m, bay.keep_out_m) : []),
      ...routes.map(
        (route): ScaleItem => ({
          kind: 'line',
          layer: ROUTE_LAYERS[route.kind],
          closed: false,
          points: route.path_m.map(at),
        }),
      ),
      ...bay.posts.flatMap((post) => postItems(post.name, at(post.at_m), height)),
      ...(station === null ? [] : stationItems(at(station.at_m), height)),
    ],
  };
}

const ROUTE_LAYERS: Readonly<Record<RouteReport['kind'], ScaleLayer>> = {
  'electrode lead': 'ELECTRODE_LEAD',
  'work lead': 'WORK_LEAD',
  'air hose': 'AIR_HOSE',
};

/** Corners of half a circle. */
const ARC_PARTS = 18;

function at({ x_m, y_m }: PointReport): ScalePoint {
  return { x: x_m, y: y_m };
}

function outline(layer: ScaleLayer, corners: readonly PointReport[]): ScaleItem {
  return { kind: 'line', layer, closed: true, points: corners.map(at) };
}

function named(area: AreaReport, layer: ScaleLayer, height: number): ScaleItem[] {
  const xs = area.outline_m.map(({ x_m }) => x_m);
  const ys = area.outline_m.map(({ y_m }) => y_m);
  if (xs.length === 0) return [];
  return [
    outline(layer, area.outline_m),
    {
      kind: 'text',
      layer: 'TEXT',
      at: { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: Math.max(...ys) - 1.6 * height },
      text: area.name,
      anchor: 'middle',
      height,
    },
  ];
}

/** A band around each stretch of the seam. */
function keepClear(seam: readonly PointReport[], distance: number): ScaleItem[] {
  return seam.slice(1).map((end, index): ScaleItem => {
    const start = seam[index]!;
    const along = Math.atan2(end.y_m - start.y_m, end.x_m - start.x_m);
    const arc = (centre: PointReport, from: number): ScalePoint[] =>
      Array.from({ length: ARC_PARTS + 1 }, (_unused, step) => {
        const angle = from + (Math.PI * step) / ARC_PARTS;
        return {
          x: centre.x_m + distance * Math.cos(angle),
          y: centre.y_m + distance * Math.sin(angle),
        };
      });
    return {
      kind: 'line',
      layer: 'KEEP_CLEAR',
      closed: true,
      points: [...arc(end, along - Math.PI / 2), ...arc(start, along + Math.PI / 2)],
    };
  });
}

function postItems(name: string, { x, y }: ScalePoint, height: number): ScaleItem[] {
  const half = 0.6 * height;
  return [
    {
      kind: 'line',
      layer: 'POST',
      closed: true,
      points: [
        { x: x - half, y: y - half },
        { x: x + half, y: y - half },
        { x: x + half, y: y + half },
        { x: x - half, y: y + half },
      ],
    },
    {
      kind: 'text',
      layer: 'TEXT',
      at: { x: x + height, y: y + height },
      text: name,
      anchor: 'start',
      height,
    },
  ];
}

function stationItems({ x, y }: ScalePoint, height: number): ScaleItem[] {
  return [
    {
      kind: 'line',
      layer: 'STATION',
      closed: true,
      points: [
        { x: x - 0.8 * height, y: y - 0.6 * height },
        { x: x + 0.8 * height, y: y - 0.6 * height },
        { x, y: y + 0.8 * height },
      ],
    },
    {
      kind: 'text',
      layer: 'TEXT',
      at: { x, y: y - 2 * height },
      text: 'control station',
      anchor: 'middle',
      height,
    },
  ];
}
