import {
  type DocumentPath,
  FOOT,
  formatAmount,
  type Kit,
  type PointReport,
  type UnitSystem,
} from '@furrow/engine';
import type { Edit } from '../../sheet/document/index.ts';

/** Something on the plan that can be moved, by dragging, by the keys or by typing. */
export interface Movable {
  readonly id: string;
  readonly title: string;
  /** Where its handle is [m]. */
  readonly at: PointReport;
  /** The points of the kit file that move with it. */
  readonly points: readonly { readonly path: DocumentPath; readonly at: PointReport }[];
}

/** Everything on the plan that can be moved; a station that is not stated moves from where it was found. */
export function movables(kit: Kit, found: PointReport | undefined): readonly Movable[] {
  const { bay } = kit;
  if (bay === undefined) return [];
  const station = bay.station === undefined ? found : place(bay.station);
  const last = bay.seam.length - 1;
  return [
    single('power', 'Power source', ['bay', 'power'], place(bay.power)),
    single('air', 'Air drop', ['bay', 'air'], place(bay.air)),
    ...(bay.work_clamp === undefined
      ? []
      : [single('work-clamp', 'Work clamp', ['bay', 'work_clamp'], place(bay.work_clamp))]),
    ...(station === undefined ? [] : [single('station', 'Control station', ['bay', 'station'], station)]),
    ...bay.seam.map((point, index) => {
      const title = index === 0 ? 'Seam start' : index === last ? 'Seam end' : `Seam point ${index + 1}`;
      return single(`seam-${index}`, title, ['bay', 'seam', index], place(point));
    }),
    whole('workpiece', bay.workpiece, ['bay', 'workpiece']),
    ...(bay.obstacles ?? []).map((area, index) =>
      whole(`obstacle-${index}`, area, ['bay', 'obstacles', index]),
    ),
    ...(bay.walkways ?? []).map((area, index) => whole(`walkway-${index}`, area, ['bay', 'walkways', index])),
  ];
}

/** The changes to the kit file that move something there; a whole outline moves with its handle. */
export function moveEdits(movable: Movable, to: PointReport, units: UnitSystem): readonly Edit[] {
  const by = { x: to.x_m - movable.at.x_m, y: to.y_m - movable.at.y_m };
  return movable.points.flatMap(({ path, at }): Edit[] => [
    { do: 'set', path: [...path, 'x'], value: placeWords(at.x_m + by.x, units) },
    { do: 'set', path: [...path, 'y'], value: placeWords(at.y_m + by.y, units) },
  ]);
}

/** The kit with something moved, to draw while it is dragged. */
export function movedKit(kit: Kit, movable: Movable, to: PointReport): Kit {
  const copy = structuredClone(kit);
  const by = { x: to.x_m - movable.at.x_m, y: to.y_m - movable.at.y_m };
  for (const { path, at } of movable.points) {
    let node: unknown = copy;
    for (const part of path.slice(0, -1)) node = (node as Record<string | number, unknown>)[part];
    const name = path.at(-1) ?? '';
    (node as Record<string | number, unknown>)[name] = { x: at.x_m + by.x, y: at.y_m + by.y };
  }
  return copy;
}

/** A place as the shop writes it, to the centimetre or the tenth of a foot. */
export function placeWords(metres: number, units: UnitSystem): string {
  const options = units === 'inch' ? { unit: 'ft', decimals: 1 } : { unit: 'm', decimals: 2 };
  return formatAmount(metres, 'length', units, options);
}

/** Where a key moves something: by a tenth of a metre or half a foot, with Shift ten times as far. */
export function placeAfterKey(
  key: string,
  far: boolean,
  at: PointReport,
  units: UnitSystem,
): PointReport | undefined {
  const step = (units === 'inch' ? FOOT / 2 : 0.1) * (far ? 10 : 1);
  switch (key) {
    case 'ArrowRight':
      return { x_m: at.x_m + step, y_m: at.y_m };
    case 'ArrowLeft':
      return { x_m: at.x_m - step, y_m: at.y_m };
    case 'ArrowUp':
      return { x_m: at.x_m, y_m: at.y_m + step };
    case 'ArrowDown':
      return { x_m: at.x_m, y_m: at.y_m - step };
    default:
      return undefined;
  }
}

function single(id: string, title: string, path: DocumentPath, at: PointReport): Movable {
  return { id, title, at, points: [{ path, at }] };
}

function whole(
  id: string,
  area: { readonly name: string; readonly outline: readonly { readonly x: number; readonly y: number }[] },
  path: DocumentPath,
): Movable {
  const corners = area.outline.map(place);
  const across = corners.map((corner) => corner.x_m);
  // on the lower edge, where neither its name nor a seam on it lies under the handle
  const handle = {
    x_m: (Math.min(...across) + Math.max(...across)) / 2,
    y_m: Math.min(...corners.map((corner) => corner.y_m)),
  };
  return {
    id,
    title: area.name,
    at: handle,
    points: corners.map((at, index) => ({ path: [...path, 'outline', index], at })),
  };
}

function place({ x, y }: { readonly x: number; readonly y: number }): PointReport {
  return { x_m: x, y_m: y };
}
