import type { HeatField, Job } from '@furrow/engine';

/** Where metres of the section lie on the drawing [drawing unit]. */
export interface HeatSpace {
  /** Size of the letters. */
  readonly size: number;
  /** Drawing units per metre [1/m]. */
  readonly scale: number;
  /** Centre line of the groove. */
  readonly centre: number;
  /** Plate's surface. */
  readonly surface: number;
  /** Where the drawn plate ends. */
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
  /** Depth to which the plate is drawn; less than its thickness where that would make the groove small [m]. */
  readonly shown: number;
}

/** What the space is laid out for. */
export interface HeatSpaceInput {
  readonly field: HeatField;
  readonly groove: Job['groove'];
  readonly plate: Job['plate'];
}

/** How much deeper than the groove a plate is drawn whole, and how deep of a thicker one. */
const WHOLE_TO = 5;
const PART = 4;

/** Lays out the section so that it looks the same at every moment: one scale in both directions. */
export function heatSpace(
  { field, groove, plate }: HeatSpaceInput,
  width: number,
  heightMost: number,
): HeatSpace {
  const size = Math.min(13, Math.max(8.5, width / 66));
  const last = field.frames.at(-1)?.floor ?? [];
  const deepest = Math.max(groove.depth.wanted + groove.depth.plus, ...last);
  const cut = [...field.across].filter((_, index) => (last[index] ?? 0) > 0).map(Math.abs);
  const half = Math.max(groove.width.most / 2, ...cut);
  const shown = plate.thickness <= WHOLE_TO * deepest ? plate.thickness : PART * deepest;
  const surface = 1.2 * size;
  const room = Math.max(40, heightMost - surface - 5.5 * size);
  const pad = 0.4 * size;
  const scale = Math.min(room / shown, (width / 2 - pad) / (2.4 * half));
  const centre = width / 2;
  const [first = 0, end = 0] = [field.across[0], field.across.at(-1)];
  return {
    size,
    scale,
    centre,
    surface,
    bottom: surface + shown * scale,
    left: Math.max(pad, centre + Math.min(first, -half) * scale),
    right: Math.min(width - pad, centre + Math.max(end, half) * scale),
    shown,
  };
}
