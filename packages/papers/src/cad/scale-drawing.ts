import type { UnitSystem } from '@furrow/engine';

/** What an item stands for; a layer of its own in a CAD program. */
export type ScaleLayer =
  | 'PLATE'
  | 'WANTED'
  | 'LEAST_ACCEPTED'
  | 'MOST_ACCEPTED'
  | 'EXPECTED'
  | 'EXPECTED_SHALLOW'
  | 'EXPECTED_DEEP'
  | 'LIGAMENT'
  | 'DIMENSION'
  | 'TEXT'
  | 'AXIS'
  | 'SEAM'
  | 'PASS'
  | 'RUN_OUT'
  | 'START'
  | 'ELECTRODE_CHANGE'
  | 'GAUGE_STATION'
  | 'BAY'
  | 'OBSTACLE'
  | 'WALKWAY'
  | 'WORKPIECE'
  | 'KEEP_CLEAR'
  | 'POST'
  | 'STATION'
  | 'ELECTRODE_LEAD'
  | 'WORK_LEAD'
  | 'AIR_HOSE';

/** A place, x to the right and y up, at full size [m]. */
export interface ScalePoint {
  /** To the right [m]. */
  readonly x: number;
  /** Up [m]. */
  readonly y: number;
}

/** A line through points; closed, it comes back to the first. */
export interface ScaleLine {
  readonly kind: 'line';
  readonly layer: ScaleLayer;
  readonly points: readonly ScalePoint[];
  readonly closed: boolean;
}

/** A line of text, its baseline at `at`. */
export interface ScaleText {
  readonly kind: 'text';
  readonly layer: ScaleLayer;
  readonly at: ScalePoint;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Height of capital letters [m]. */
  readonly height: number;
}

/** One thing drawn. */
export type ScaleItem = ScaleLine | ScaleText;

/** A drawing at full size, for programs that measure in it. */
export interface ScaleDrawing {
  readonly title: string;
  /** What it shows, and what of it is to scale. */
  readonly description: string;
  /** Units of its words, and of the file where the format has units of its own. */
  readonly units: UnitSystem;
  /** Height of its usual text, by which lines are thick or thin [m]. */
  readonly textHeight: number;
  readonly items: readonly ScaleItem[];
}
