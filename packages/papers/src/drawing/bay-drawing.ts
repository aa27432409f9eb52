import {
  type AreaReport,
  type BayReport,
  type FireZoneReport,
  formatAmount,
  type PointReport,
  type RouteReport,
  type UnitSystem,
} from '@furrow/engine';
import { bayAxes } from './bay-axes.ts';
import { type BayScale, bayPoint, scaleOfBay } from './bay-scale.ts';
import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { hatch } from './hatch.ts';
import { drawLegend, type LegendEntry, legendRowHeight, legendRows } from './legend.ts';
import { textWidth } from './text-width.ts';
import { outlineWithin, zoneMarks, zoneReachesBeyond, zoneWords } from './zone-marks.ts';

/** What the bay is drawn of, and how large. */
export interface BayDrawingInput {
  readonly bay: BayReport;
  /** Scale to keep, such as that of the bay before something was moved; as large as it goes if left out. */
  readonly scale?: BayScale;
  /** Where the control station stands, if it is known. */
  readonly station?: PointReport | undefined;
  readonly routes: readonly RouteReport[];
  /** Where the jet throws, outline by outline; not drawn if left out. */
  readonly jets?: readonly (readonly PointReport[])[];
  /** How far leads and hoses of the stock reach in a straight line. */
  readonly reach: readonly BayReach[];
  /** The fire zone around the seam; not drawn if left out. */
  readonly fireZone?: FireZoneReport | undefined;
  /** Whether the plan is wide enough for the whole fire zone, not for the bay alone. */
  readonly whole?: boolean;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 260. */
  readonly width: number;
  /** Greatest height of the plan itself, without its legend [drawing unit]. */
  readonly heightMost: number;
}

/** How far something of the stock reaches from where it starts. */
export interface BayReach {
  readonly name: string;
  readonly from: PointReport;
  /** Radius [m]. */
  readonly radius: number;
}

const ROUTE_ROLES: Readonly<Record<RouteReport['kind'], MarkRole>> = {
  'electrode lead': 'electrode-lead',
  'work lead': 'work-lead',
  'air hose': 'air-hose',
};

/** Corners of a circle as it is drawn. */
const CIRCLE_PARTS = 72;

/** Size of letters on the plan [drawing unit]. */
const SIZE = 12;

/** Where places of the bay lie on the drawing of this input, for handles laid over it. */
export function bayScale(
  input: Pick<BayDrawingInput, 'bay' | 'width' | 'heightMost' | 'fireZone' | 'whole'>,
): BayScale {
  const sheet = {
    width: Math.max(260, input.width),
    heightMost: input.heightMost,
    margin: 2.6 * SIZE,
  };
  return scaleOfBay(input.bay, sheet, input.whole === true ? input.fireZone?.with_jet_m : []);
}

/** Draws the bay in plan view, to scale: what stands where, how leads and hoses run, and what is kept clear. */
export function bayDrawing(input: BayDrawingInput): Drawing {
  const { bay, units } = input;
  const width = Math.max(260, input.width);
  const scale = input.scale ?? bayScale(input);
  const low = scale.top + (scale.most.y_m - scale.least.y_m) * scale.perMetre;
  const rows = legendRows(legendEntries(input, scale), width - SIZE, SIZE);
  const legendTop = low + 2.6 * SIZE;
  return {
    width,
    height: legendTop + rows.length * legendRowHeight(SIZE) + 0.4 * SIZE,
    title: input.whole === true ? 'Fire zone in plan view' : 'Bay in plan view',
    description: describe(input),
    marks: [
      ...areaMarks([bay.workpiece], 'workpiece', scale),
      ...bay.walkways.flatMap((area) => hatch(corners(area, scale), 0.8 * SIZE, 'walkway')),
      ...areaMarks(bay.walkways, 'walkway', scale),
      ...areaMarks(bay.obstacles, 'obstacle', scale),
      ...outlineMarks(bay, scale),
      ...bayAxes(scale, units, SIZE),
      ...keepClearMarks(input, scale),
      ...(input.jets ?? []).flatMap((outline) => outlineWithin(outline, 'jet', scale)),
      ...(input.fireZone === undefined ? [] : zoneMarks(input.fireZone, scale, SIZE)),
      ...input.reach.flatMap((reach) => reachMarks(reach, scale)),
      { kind: 'polyline', role: 'seam', points: bay.seam_m.map((point) => bayPoint(scale, point)) },
      ...input.routes.map(
        (route): Mark => ({
          kind: 'polyline',
          role: ROUTE_ROLES[route.kind],
          points: route.path_m.map((point) => beside(bayPoint(scale, point), route.kind)),
        }),
      ),
      ...areaNames(input, scale),
      ...bay.posts.flatMap((post) => postMarks(post, scale)),
      ...(input.station === undefined ? [] : stationMarks(bayPoint(scale, input.station))),
      ...drawLegend(rows, { x: 0.5 * SIZE, y: legendTop }, SIZE),
    ],
  };
}

/** A hose is drawn a little under the lead that it follows, so that both can be seen. */
function beside({ x, y }: DrawingPoint, kind: RouteReport['kind']): DrawingPoint {
  return { x, y: kind === 'air hose' ? y + 0.35 * SIZE : y };
}

function corners(area: AreaReport, scale: BayScale): DrawingPoint[] {
  return area.outline_m.map((point) => bayPoint(scale, point));
}

function areaMarks(areas: readonly AreaReport[], role: MarkRole, scale: BayScale): Mark[] {
  return areas.flatMap((area): Mark[] => {
    const points = corners(area, scale);
    const first = points[0];
    if (first === undefined) return [];
    const edge: Mark = { kind: 'polyline', role, points: [...points, first] };
    return role === 'walkway' ? [edge] : [{ kind: 'area', role, points }, edge];
  });
}

function outlineMarks(bay: BayReport, scale: BayScale): Mark[] {
  const points = bay.outline_m.map((point) => bayPoint(scale, point));
  const first = points[0];
  return first === undefined ? [] : [{ kind: 'polyline', role: 'bay', points: [...points, first] }];
}

function areaNames({ bay }: BayDrawingInput, scale: BayScale): Mark[] {
  const named: [AreaReport, MarkRole][] = [
    ...bay.obstacles.map((area): [AreaReport, MarkRole] => [area, 'obstacle']),
    ...bay.walkways.map((area): [AreaReport, MarkRole] => [area, 'walkway']),
    [bay.workpiece, 'workpiece'],
  ];
  return named.flatMap(([area, role]): Mark[] => {
    const points = corners(area, scale);
    if (points.length === 0) return [];
    const xs = points.map((point) => point.x);
    const ys = points.map((point) => point.y);
    const wide = Math.max(...xs) - Math.min(...xs);
    const tall = Math.max(...ys) - Math.min(...ys);
    const size = Math.min(SIZE, (0.94 * wide * SIZE) / Math.max(1, textWidth(area.name, SIZE)));
    if (size < 8 || tall < 1.3 * size) return [];
    // near the upper edge, where leads that cross seldom run
    const at = { x: (Math.max(...xs) + Math.min(...xs)) / 2, y: Math.min(...ys) + 1.15 * size };
    return [{ kind: 'text', role, at, text: area.name, anchor: 'middle', size }];
  });
}

/** What the station keeps clear of: a band around each stretch of the seam. */
function keepClearMarks({ bay }: BayDrawingInput, scale: BayScale): Mark[] {
  const keepClear = bay.keep_out_m;
  if (!(keepClear > 0)) return [];
  return bay.seam_m.slice(1).map((end, index): Mark => {
    const start = bay.seam_m[index]!;
    const along = Math.atan2(end.y_m - start.y_m, end.x_m - start.x_m);
    const round = [
      ...arc(end, keepClear, along - Math.PI / 2),
      ...arc(start, keepClear, along + Math.PI / 2),
    ];
    const points = round.map((point) => bayPoint(scale, kept(point, scale)));
    return { kind: 'polyline', role: 'keep-clear', points: [...points, points[0]!] };
  });
}

/** Half a circle against the clock, from an angle on [rad]. */
function arc(centre: PointReport, radius: number, from: number): PointReport[] {
  const half = CIRCLE_PARTS / 2;
  return Array.from({ length: half + 1 }, (_, index) => {
    const angle = from + (Math.PI * index) / half;
    return { x_m: centre.x_m + radius * Math.cos(angle), y_m: centre.y_m + radius * Math.sin(angle) };
  });
}

/** A circle as far as it lies in the bay. */
function reachMarks({ from, radius }: BayReach, scale: BayScale): Mark[] {
  const parts: DrawingPoint[][] = [[]];
  for (let index = 0; index <= CIRCLE_PARTS; index += 1) {
    const angle = (2 * Math.PI * index) / CIRCLE_PARTS;
    const point = {
      x_m: from.x_m + radius * Math.cos(angle),
      y_m: from.y_m + radius * Math.sin(angle),
    };
    if (isInside(point, scale)) parts.at(-1)?.push(bayPoint(scale, point));
    else parts.push([]);
  }
  return parts
    .filter((points) => points.length > 1)
    .map((points) => ({ kind: 'polyline', role: 'reach', points }));
}

function isInside({ x_m, y_m }: PointReport, { least, most }: BayScale): boolean {
  return x_m >= least.x_m && x_m <= most.x_m && y_m >= least.y_m && y_m <= most.y_m;
}

function kept({ x_m, y_m }: PointReport, { least, most }: BayScale): PointReport {
  return {
    x_m: Math.min(most.x_m, Math.max(least.x_m, x_m)),
    y_m: Math.min(most.y_m, Math.max(least.y_m, y_m)),
  };
}

function postMarks({ name, kind, at_m }: BayReport['posts'][number], scale: BayScale): Mark[] {
  const { x, y } = bayPoint(scale, at_m);
  const half = 0.6 * SIZE;
  const square = [
    { x: x - half, y: y - half },
    { x: x + half, y: y - half },
    { x: x + half, y: y + half },
    { x: x - half, y: y + half },
  ];
  // the name points into the bay, clear of its walls
  const early = at_m.x_m - scale.least.x_m < scale.most.x_m - at_m.x_m;
  return [
    { kind: 'area', role: 'post', points: square },
    { kind: 'polyline', role: 'post', points: [...square, square[0]!] },
    {
      kind: 'text',
      role: 'label',
      at: { x, y: y + 0.36 * SIZE },
      text: letter(kind),
      anchor: 'middle',
      size: SIZE,
    },
    {
      kind: 'text',
      role: 'label',
      at: { x: early ? x - half : x + half, y: y - SIZE },
      text: name,
      anchor: early ? 'start' : 'end',
      size: SIZE,
    },
  ];
}

function letter(kind: BayReport['posts'][number]['kind']): string {
  return { power: 'P', air: 'A', 'work clamp': 'W' }[kind];
}

function stationMarks({ x, y }: DrawingPoint): Mark[] {
  const half = 0.75 * SIZE;
  return [
    {
      kind: 'area',
      role: 'station',
      points: [
        { x: x - half, y: y + 0.7 * half },
        { x, y: y - half },
        { x: x + half, y: y + 0.7 * half },
      ],
    },
    {
      kind: 'text',
      role: 'station',
      at: { x, y: y + 1.9 * SIZE },
      text: 'control station',
      anchor: 'middle',
      size: SIZE,
    },
  ];
}

function legendEntries(
  { bay, routes, jets, reach, fireZone, units }: BayDrawingInput,
  scale: BayScale,
): LegendEntry[] {
  const width = 2.4 * SIZE;
  const entry = (role: MarkRole, text: string): LegendEntry => ({
    text,
    width,
    sample: ({ x, y }) => [{ kind: 'line', role, from: { x, y }, to: { x: x + width, y } }],
  });
  const kinds = [...new Set(routes.map((route) => route.kind))];
  return [
    entry('seam', 'seam'),
    ...kinds.map((kind) => entry(ROUTE_ROLES[kind], kind)),
    ...(bay.keep_out_m > 0
      ? [entry('keep-clear', `station keeps ${formatAmount(bay.keep_out_m, 'length', units)} from the seam`)]
      : []),
    ...((jets ?? []).length > 0 ? [entry('jet', 'in the jet: no station, nobody')] : []),
    ...reach.map(({ name, radius }) =>
      entry('reach', `reach of ${name}: ${formatAmount(radius, 'length', units)} straight`),
    ),
    ...zoneEntries(fireZone, scale, units).map(({ role, text }) => entry(role, text)),
  ];
}

function zoneEntries(
  zone: FireZoneReport | undefined,
  scale: BayScale,
  units: UnitSystem,
): readonly { readonly role: MarkRole; readonly text: string }[] {
  if (zone === undefined) return [];
  const beyond = zoneReachesBeyond(zone, scale) ? ', beyond this plan' : '';
  return [
    ...zoneWords(zone, units).map(({ role, text }) => ({ role, text: `${text}${beyond}` })),
    { role: 'jet', text: 'where the jet throws' },
  ];
}

function describe({ bay, station, routes, fireZone, units }: BayDrawingInput): string {
  const length = (value: number): string => formatAmount(value, 'length', units);
  const place = ({ x_m, y_m }: PointReport): string => `${length(x_m)} across, ${length(y_m)} up`;
  const parts = [
    ...bay.posts.map((post) => `${post.name} at ${place(post.at_m)}`),
    ...(station === undefined ? [] : [`control station at ${place(station)}`]),
    ...routes.map((route) => `${route.name} from ${route.from} to ${route.to}, ${length(route.needed_m)}`),
    ...(fireZone === undefined ? [] : zoneWords(fireZone, units).map(({ text }) => text)),
  ];
  return `${parts.join('; ')}.`;
}
