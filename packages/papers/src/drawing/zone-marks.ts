import { type FireZoneReport, formatStated, type PointReport, type UnitSystem } from '@furrow/engine';
import { type BayScale, bayPoint } from './bay-scale.ts';
import { clipLine } from './clip-line.ts';
import type { Mark, MarkRole } from './drawing.ts';

/** Length of the arrow that shows where the jet throws, of its head [letter sizes]. */
const ARROW = 4;
const HEAD = 0.9;

/** The fire zone as far as it lies on the plan: a line all round, one with the lobe of the jet, and an arrow along it. */
export function zoneMarks(zone: FireZoneReport, scale: BayScale, size: number): Mark[] {
  return [
    ...outlineWithin(zone.round_m, 'fire-zone', scale),
    ...outlineWithin(zone.with_jet_m, 'jet-zone', scale),
    ...jetArrows(zone, scale, size),
  ];
}

/** What the lines of the zone stand for, with how far they reach. */
export function zoneWords(
  zone: FireZoneReport,
  units: UnitSystem,
): readonly { readonly role: MarkRole; readonly text: string }[] {
  const length = (metres: number): string => formatStated(metres, 'm', units);
  return [
    { role: 'fire-zone', text: `fire zone, ${length(zone.radius_m)} all round` },
    { role: 'jet-zone', text: `with the jet, ${length(zone.ahead_m)} ahead of the torch` },
  ];
}

/** Whether a part of the zone lies beyond the plan. */
export function zoneReachesBeyond(zone: FireZoneReport, { least, most }: BayScale): boolean {
  return zone.with_jet_m.some(
    ({ x_m, y_m }) => x_m < least.x_m || x_m > most.x_m || y_m < least.y_m || y_m > most.y_m,
  );
}

/** A closed line as far as it lies on the plan. */
export function outlineWithin(outline: readonly PointReport[], role: MarkRole, scale: BayScale): Mark[] {
  const first = outline[0];
  if (first === undefined) return [];
  return clipLine([...outline, first], scale).map((points) => ({
    kind: 'polyline',
    role,
    points: points.map((point) => bayPoint(scale, point)),
  }));
}

/** An arrow at the end of the seam along the jet; at both ends where the jet may go either way. */
function jetArrows({ seam_m: seam, both_ways }: FireZoneReport, scale: BayScale, size: number): Mark[] {
  const ends: [PointReport | undefined, PointReport | undefined][] = [
    [seam.at(-2), seam.at(-1)],
    ...(both_ways ? [[seam[1], seam[0]] as [PointReport | undefined, PointReport | undefined]] : []),
  ];
  return ends.flatMap(([before, end]): Mark[] => {
    if (before === undefined || end === undefined) return [];
    const [from, to] = [bayPoint(scale, before), bayPoint(scale, end)];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) return [];
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
    const at = (ahead: number, aside: number) => ({
      x: to.x + size * (ahead * along.x - aside * along.y),
      y: to.y + size * (ahead * along.y + aside * along.x),
    });
    return [
      { kind: 'line', role: 'jet', from: at(0.4, 0), to: at(ARROW - HEAD, 0) },
      { kind: 'area', role: 'jet', points: [at(ARROW, 0), at(ARROW - HEAD, 0.4), at(ARROW - HEAD, -0.4)] },
    ];
  });
}
