import type { BayReport, PointReport } from '@furrow/engine';
import type { DrawingPoint } from './drawing.ts';

/** How metres of the bay lie on the drawing. */
export interface BayScale {
  /** Drawing units per metre. */
  readonly perMetre: number;
  /** Left and lower end of the bay [m]. */
  readonly least: PointReport;
  /** Right and upper end of the bay [m]. */
  readonly most: PointReport;
  /** Where the left and upper end lie on the drawing [drawing unit]. */
  readonly left: number;
  readonly top: number;
}

/** Sheet that a bay is drawn on [drawing unit]. */
export interface BaySheet {
  readonly width: number;
  /** The plan itself is never taller; the legend comes under it. */
  readonly heightMost: number;
  /** Room around the plan for its axes. */
  readonly margin: number;
}

/** Lays everything that stands in the bay, and what reaches out of it, on the sheet, to scale and as large as it goes. */
export function scaleOfBay(bay: BayReport, sheet: BaySheet, beyond: readonly PointReport[] = []): BayScale {
  const points = [
    ...beyond,
    ...bay.outline_m,
    ...bay.seam_m,
    ...bay.posts.map((post) => post.at_m),
    ...[...bay.obstacles, ...bay.walkways].flatMap((area) => area.outline_m),
    ...bay.workpiece.outline_m,
  ];
  const across = points.map((point) => point.x_m);
  const up = points.map((point) => point.y_m);
  const least = { x_m: Math.min(...across, Infinity), y_m: Math.min(...up, Infinity) };
  const most = { x_m: Math.max(...across, -Infinity), y_m: Math.max(...up, -Infinity) };
  const empty = points.length === 0;
  const from = empty ? { x_m: 0, y_m: 0 } : least;
  const to = empty ? { x_m: 1, y_m: 1 } : most;
  const wide = Math.max(0.1, to.x_m - from.x_m);
  const tall = Math.max(0.1, to.y_m - from.y_m);
  const room = Math.max(40, sheet.width - 2 * sheet.margin);
  const perMetre = Math.min(room / wide, Math.max(40, sheet.heightMost) / tall);
  return {
    perMetre,
    least: from,
    most: to,
    left: Math.max(sheet.margin, (sheet.width - wide * perMetre) / 2),
    top: sheet.margin,
  };
}

/** Where a place in the bay lies on the drawing. */
export function bayPoint(scale: BayScale, { x_m, y_m }: PointReport): DrawingPoint {
  return {
    x: scale.left + (x_m - scale.least.x_m) * scale.perMetre,
    y: scale.top + (scale.most.y_m - y_m) * scale.perMetre,
  };
}

/** The place in the bay that lies at a point of the drawing. */
export function bayPlace(scale: BayScale, { x, y }: DrawingPoint): PointReport {
  return {
    x_m: scale.least.x_m + (x - scale.left) / scale.perMetre,
    y_m: scale.most.y_m - (y - scale.top) / scale.perMetre,
  };
}
