/** What a mark stands for; screen and print take line style and colour from it, never meaning from colour alone. */
export type MarkRole =
  | 'plate'
  | 'surface'
  | 'break'
  | 'target'
  | 'tolerance'
  | 'tolerance-limit'
  | 'floor-median'
  | 'floor-band'
  | 'floor-hatch'
  | 'ligament'
  | 'dimension'
  | 'scale'
  | 'lane'
  | 'pass'
  | 'run-out'
  | 'start'
  | 'electrode-change'
  | 'gauge-station'
  | 'loss'
  | 'axis'
  | 'label'
  | 'cursor'
  | 'course'
  | 'course-second'
  | 'course-third'
  | 'course-event'
  | 'course-limit'
  | 'course-below'
  | 'static'
  | 'flowing'
  | 'wanted'
  | 'bay'
  | 'obstacle'
  | 'walkway'
  | 'workpiece'
  | 'seam'
  | 'keep-clear'
  | 'electrode-lead'
  | 'work-lead'
  | 'air-hose'
  | 'post'
  | 'station'
  | 'heat-1'
  | 'heat-2'
  | 'heat-3'
  | 'heat-4'
  | 'heat-5'
  | 'heat-6'
  | 'heat-7'
  | 'isotherm'
  | 'isotherm-ac1'
  | 'isotherm-ac3'
  | 'isotherm-melting'
  | 'cut'
  | 'label-ground'
  | 'leader'
  | 'reach'
  | 'fire-zone'
  | 'jet-zone'
  | 'jet'
  | 'electrode'
  | 'torch-head'
  | 'travel'
  | 'code';

/** A place on the drawing; x to the right, y down [drawing unit]. */
export interface DrawingPoint {
  readonly x: number;
  readonly y: number;
}

/** A line through points, open. */
export interface PolylineMark {
  readonly kind: 'polyline';
  readonly role: MarkRole;
  readonly points: readonly DrawingPoint[];
}

/** A filled shape, closed. */
export interface AreaMark {
  readonly kind: 'area';
  readonly role: MarkRole;
  readonly points: readonly DrawingPoint[];
}

/** A straight line; a tick of an axis is one too. */
export interface LineMark {
  readonly kind: 'line' | 'tick';
  readonly role: MarkRole;
  readonly from: DrawingPoint;
  readonly to: DrawingPoint;
}

/** A line of text, its baseline at `at`. */
export interface TextMark {
  readonly kind: 'text';
  readonly role: MarkRole;
  readonly at: DrawingPoint;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Size of the letters [drawing unit]. */
  readonly size: number;
}

/** A dimension line with an arrow at each end; its text is a mark of its own. */
export interface DimensionMark {
  readonly kind: 'dimension';
  readonly role: MarkRole;
  readonly from: DrawingPoint;
  readonly to: DrawingPoint;
  /** Length of the arrows [drawing unit]. */
  readonly arrow: number;
}

/** One thing drawn. */
export type Mark = PolylineMark | AreaMark | LineMark | TextMark | DimensionMark;

/** A drawing as plain data, painted in the order of its marks. */
export interface Drawing {
  /** Width [drawing unit]. */
  readonly width: number;
  /** Height [drawing unit]. */
  readonly height: number;
  readonly title: string;
  /** What the drawing shows, in words, for those who cannot see it. */
  readonly description: string;
  readonly marks: readonly Mark[];
}
