import type { Answer, ReadJob, UnitSystem } from '@furrow/engine';
import { bayAtScale } from './bay-at-scale.ts';
import type { ScaleDrawing } from './scale-drawing.ts';
import { seamStripAtScale } from './seam-strip-at-scale.ts';
import { sectionAtScale } from './section-at-scale.ts';

/** Every kind of drawing at full size; the name is that of its file too. */
export const DRAWING_KINDS = ['section', 'seam-strip', 'bay'] as const;

/** A kind of drawing at full size. */
export type DrawingKind = (typeof DRAWING_KINDS)[number];

/** A drawing, or why there is none. */
export type MadeDrawing = { readonly drawing: ScaleDrawing } | { readonly wanting: string };

/** Makes the drawing of a kind at full size. */
export function makeDrawing(
  kind: DrawingKind,
  read: ReadJob,
  { plan, supply }: Answer,
  units: UnitSystem,
): MadeDrawing {
  const { job } = read;
  switch (kind) {
    case 'section':
      return { drawing: sectionAtScale({ job, plan, units }) };
    case 'seam-strip':
      return plan === undefined
        ? { wanting: 'without a plan there are no passes to draw' }
        : { drawing: seamStripAtScale({ job, plan, units }) };
    case 'bay': {
      const place = supply?.place ?? undefined;
      return place === undefined
        ? { wanting: 'without a kit that describes the bay there is none to draw' }
        : { drawing: bayAtScale(place, job.title, units) };
    }
  }
}
