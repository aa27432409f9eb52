import type { MarkRole } from '../drawing/index.ts';

/** Dark text and lines. */
export const INK = '#1b2733';
/** Lines and text of less weight; still above 4.5 to 1 on white. */
export const SOFT_INK = '#4d5b66';
/** The one accent: what is wanted and accepted. */
export const ACCENT = '#0d5c66';

/** How marks of one role are drawn on paper. */
export interface MarkStyle {
  readonly stroke?: string;
  /** Width of the line [drawing unit]. */
  readonly width?: number;
  /** Lengths of dashes and gaps [drawing unit]. */
  readonly dash?: readonly number[];
  readonly fill?: string;
  /** Colour of text of this role. */
  readonly text: string;
  readonly bold?: boolean;
}

/** Line styles tell the roles apart in black and white; colour only helps. */
export const MARK_STYLES: Readonly<Record<MarkRole, MarkStyle>> = {
  plate: { fill: '#e9ecee', text: INK },
  surface: { stroke: INK, width: 1.4, text: INK },
  break: { stroke: INK, width: 0.6, text: INK },
  target: { stroke: ACCENT, width: 1.2, dash: [8, 2, 1.4, 2], text: ACCENT },
  tolerance: { fill: '#d3e4e6', text: ACCENT },
  'tolerance-limit': { stroke: ACCENT, width: 0.8, dash: [4, 2.4], text: ACCENT },
  'floor-median': { stroke: INK, width: 1.9, text: INK, bold: true },
  'floor-band': { text: INK },
  'floor-hatch': { stroke: INK, width: 0.4, text: INK },
  ligament: { stroke: INK, width: 0.7, dash: [12, 3.5], text: INK },
  dimension: { stroke: INK, width: 0.5, text: INK },
  scale: { stroke: INK, width: 0.9, text: INK },
  lane: { stroke: SOFT_INK, width: 0.4, dash: [1.5, 2], text: INK },
  pass: { fill: '#b4c0c6', text: INK },
  'run-out': { stroke: INK, width: 0.4, text: INK },
  start: { fill: INK, text: INK },
  'electrode-change': { stroke: '#ffffff', width: 0.5, fill: INK, text: INK },
  'gauge-station': { stroke: ACCENT, width: 1, fill: '#ffffff', text: INK },
  loss: { stroke: INK, width: 0.4, fill: INK, text: INK },
  axis: { stroke: INK, width: 0.6, text: SOFT_INK },
  label: { stroke: INK, width: 0.6, text: INK },
  cursor: { stroke: ACCENT, width: 1.5, fill: ACCENT, text: ACCENT },
  course: { stroke: INK, width: 1.6, text: INK },
  'course-second': { stroke: INK, width: 1.4, dash: [6, 3], text: INK },
  'course-third': { stroke: INK, width: 1.4, dash: [1.5, 2.5], text: INK },
  'course-event': { stroke: SOFT_INK, width: 0.6, dash: [1, 2], text: SOFT_INK },
  'course-limit': { stroke: ACCENT, width: 1, dash: [5, 3], text: ACCENT },
  'course-below': { stroke: INK, width: 0.4, text: INK, bold: true },
  static: { stroke: SOFT_INK, width: 1, dash: [2, 2.5], fill: '#ffffff', text: SOFT_INK },
  flowing: { stroke: INK, width: 1.8, fill: INK, text: INK, bold: true },
  wanted: { stroke: ACCENT, width: 1.4, dash: [5, 3], text: ACCENT },
  bay: { stroke: INK, width: 1.6, text: INK },
  obstacle: { stroke: INK, width: 0.8, fill: '#d4d9dc', text: INK },
  walkway: { stroke: SOFT_INK, width: 0.6, dash: [6, 3], text: SOFT_INK },
  workpiece: { stroke: INK, width: 0.8, fill: '#eef0f1', text: INK },
  seam: { stroke: ACCENT, width: 2.4, text: ACCENT },
  'keep-clear': { stroke: INK, width: 0.6, dash: [3, 2], text: SOFT_INK },
  'electrode-lead': { stroke: INK, width: 1.8, text: INK },
  'work-lead': { stroke: INK, width: 1.8, dash: [9, 3], text: INK },
  'air-hose': { stroke: ACCENT, width: 1.6, dash: [2, 2.4], text: ACCENT },
  post: { stroke: INK, width: 1, fill: '#ffffff', text: INK },
  station: { stroke: INK, width: 1, fill: INK, text: INK, bold: true },
  'heat-1': { fill: '#f3ead6', text: INK },
  'heat-2': { fill: '#ecd6ab', text: INK },
  'heat-3': { fill: '#e2ba7c', text: INK },
  'heat-4': { fill: '#d69655', text: INK },
  'heat-5': { fill: '#bd6b3a', text: INK },
  'heat-6': { fill: '#96432a', text: INK },
  'heat-7': { fill: '#5f211c', text: INK },
  isotherm: { stroke: INK, width: 0.6, text: INK },
  'isotherm-ac1': { stroke: INK, width: 1.2, dash: [6, 2.4], text: INK },
  'isotherm-ac3': { stroke: INK, width: 1.2, dash: [8, 2, 1.4, 2], text: INK },
  'isotherm-melting': { stroke: INK, width: 1.9, text: INK, bold: true },
  cut: { fill: '#ffffff', text: INK },
  leader: { stroke: INK, width: 0.5, text: INK },
  'label-ground': { fill: '#ffffff', text: INK },
  'fire-zone': { stroke: INK, width: 1.4, dash: [7, 3], text: INK },
  'jet-zone': { stroke: INK, width: 1.1, dash: [1.6, 2.4], text: INK },
  jet: { stroke: INK, width: 1.6, fill: INK, text: INK },
  electrode: { stroke: INK, width: 0.8, fill: '#b4c0c6', text: INK },
  'torch-head': { stroke: INK, width: 0.9, fill: '#ffffff', text: INK },
  travel: { stroke: ACCENT, width: 1.6, fill: ACCENT, text: ACCENT },
  reach: { stroke: ACCENT, width: 0.8, dash: [1.5, 4], text: ACCENT },
  code: { fill: '#000000', text: INK },
};
