import type { BayReport, FireZoneReport, UnitSystem } from '@furrow/engine';
import { bayDrawing } from './bay-drawing.ts';
import type { Drawing } from './drawing.ts';

/** What the fire zone is drawn of, and how large. */
export interface FireZoneDrawingInput {
  readonly zone: FireZoneReport;
  /** The bay that it lies in; left out where no kit describes one. */
  readonly bay?: BayReport | undefined;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 260. */
  readonly width: number;
  /** Greatest height of the plan itself, without its legend [drawing unit]. */
  readonly heightMost: number;
}

/** Draws the whole fire zone in plan view, to scale, with what stands in the bay. */
export function fireZoneDrawing({ zone, bay, ...sheet }: FireZoneDrawingInput): Drawing {
  // at this scale the names of posts would hide each other, and the station's own distance is no matter of fire
  const plan = bay === undefined ? seamAlone(zone) : { ...bay, posts: [], keep_out_m: 0 };
  return bayDrawing({ bay: plan, fireZone: zone, whole: true, routes: [], reach: [], ...sheet });
}

/** A plan of nothing but the seam. */
function seamAlone({ seam_m }: FireZoneReport): BayReport {
  return {
    outline_m: [],
    obstacles: [],
    walkways: [],
    workpiece: { name: '', outline_m: [] },
    seam_m,
    posts: [],
    keep_out_m: 0,
  };
}
