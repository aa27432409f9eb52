import type { ScaleLayer } from './scale-drawing.ts';

/** How lines of a layer are drawn: by dashes, so that it can be told in black and white. */
export interface LayerStyle {
  /** Dashes and gaps as multiples of the text's height; none for a whole line [-]. */
  readonly dashes?: readonly number[];
  /** Thick lines are what is there; thin ones explain. */
  readonly thick?: boolean;
}

const DASHED = [1.6, 0.8] as const;
const DOTTED = [0.3, 0.6] as const;
const CENTRE = [3.2, 0.6, 0.6, 0.6] as const;

/** Line styles by layer. */
export const LAYER_STYLES: Readonly<Record<ScaleLayer, LayerStyle>> = {
  PLATE: { thick: true },
  WANTED: { dashes: CENTRE },
  LEAST_ACCEPTED: { dashes: DASHED },
  MOST_ACCEPTED: { dashes: DASHED },
  EXPECTED: { thick: true },
  EXPECTED_SHALLOW: { dashes: DOTTED },
  EXPECTED_DEEP: { dashes: DOTTED },
  LIGAMENT: { dashes: CENTRE },
  DIMENSION: {},
  TEXT: {},
  AXIS: {},
  SEAM: { thick: true },
  PASS: {},
  RUN_OUT: { dashes: DASHED },
  START: {},
  ELECTRODE_CHANGE: { thick: true },
  GAUGE_STATION: {},
  BAY: { thick: true },
  OBSTACLE: {},
  WALKWAY: { dashes: DASHED },
  WORKPIECE: {},
  KEEP_CLEAR: { dashes: DOTTED },
  POST: {},
  STATION: { thick: true },
  ELECTRODE_LEAD: { thick: true },
  WORK_LEAD: { thick: true, dashes: DASHED },
  AIR_HOSE: { dashes: DOTTED },
};
