import { fromUnit, type RunReport, type Written } from '@furrow/engine';
import type { LaneColumns } from './lane-columns.ts';

/** Heights of the lanes, and the room between them [px]. */
export const LANE = { reading: 64, depth: 110, passes: 18, between: 10, left: 92 } as const;

/** Colours and letters of the strip, from the styles of the page. */
export interface StripInk {
  /** As a canvas takes it. */
  readonly font: string;
  readonly ink: string;
  readonly soft: string;
  readonly line: string;
  readonly accent: string;
  readonly wash: string;
  readonly attention: string;
}

/** One lane of readings. */
export interface ReadingLane {
  readonly columns: LaneColumns;
  /** Ends of its scale, in the unit of the reading, as drawn and as written. */
  readonly least: number;
  readonly most: number;
  readonly labels: readonly [string, string];
}

/** Colours as the theme has them now. */
export function inkOf(element: Element): StripInk {
  const styles = getComputedStyle(element);
  const of = (name: string): string => styles.getPropertyValue(`--strip-${name}`).trim();
  return {
    font: `13px ${styles.fontFamily}`,
    ink: of('ink'),
    soft: of('soft'),
    line: of('line'),
    accent: of('accent'),
    wash: of('wash'),
    attention: of('attention'),
  };
}

/** Draws the frame of a lane, with what its upper and its lower end stand for. */
function paintFrame(
  context: CanvasRenderingContext2D,
  lane: {
    readonly top: number;
    readonly width: number;
    readonly height: number;
    readonly ends: readonly [upper: string, lower: string];
  },
  ink: StripInk,
): void {
  const { top, width, height, ends } = lane;
  const { left } = LANE;
  context.strokeStyle = ink.line;
  context.lineWidth = 1;
  context.strokeRect(left + 0.5, top + 0.5, width - 1, height - 1);
  context.fillStyle = ink.soft;
  context.textAlign = 'right';
  context.textBaseline = 'top';
  context.fillText(ends[0], left - 6, top);
  context.textBaseline = 'bottom';
  context.fillText(ends[1], left - 6, top + height);
}

/** Draws a lane of readings: a bar from least to greatest in each column, a line from one to the next, none over a gap. */
export function paintReadings(
  context: CanvasRenderingContext2D,
  { columns, least, most, labels }: ReadingLane,
  top: number,
  width: number,
  ink: StripInk,
): void {
  const { reading: height, left } = LANE;
  const span = most - least || 1;
  const y = (value: number): number => top + height - ((value - least) / span) * height;
  paintFrame(context, { top, width, height, ends: [labels[1], labels[0]] }, ink);
  context.strokeStyle = ink.accent;
  context.lineWidth = 1.25;
  context.beginPath();
  let joined = false;
  for (let at = 0; at < width; at += 1) {
    const first = columns.first[at]!;
    if (Number.isNaN(first)) continue;
    const x = left + at + 0.5;
    if (joined && columns.broken[at] === 0) context.lineTo(x, y(first));
    else context.moveTo(x, y(first));
    context.moveTo(x, y(columns.least[at]!) + 0.5);
    context.lineTo(x, y(columns.most[at]!) - 0.5);
    context.moveTo(x, y(columns.last[at]!));
    joined = true;
  }
  context.stroke();
}

/** What the lanes of depth and passes show. */
export interface SeamLanes {
  readonly report: Written<RunReport>;
  /** Place on the seam to a column [m to px]. */
  readonly x: (place: number) => number;
}

/** Draws the depth predicted beside the depth wanted, downwards as the groove goes. */
export function paintDepth(
  context: CanvasRenderingContext2D,
  { report, x }: SeamLanes,
  top: number,
  width: number,
  ink: StripInk,
  labels: (depth: number) => string,
): void {
  const { depth: height, left } = LANE;
  const { depth, wanted } = report;
  // where the carriage stood the depth may leave the lane: the list says how deep
  const most = 1.15 * Math.max(...depth.map(({ p95_mm: p95 }) => p95), wanted?.most_mm ?? 1);
  const deepest = wanted === null ? most : Math.min(most, 2 * wanted.most_mm);
  const y = (mm: number): number => top + (Math.min(mm, deepest) / deepest) * height;
  context.save();
  context.beginPath();
  context.rect(left, top, width, height);
  context.clip();
  if (wanted !== null) {
    context.fillStyle = ink.wash;
    context.fillRect(left, y(wanted.least_mm), width, y(wanted.most_mm) - y(wanted.least_mm));
  }
  context.fillStyle = ink.accent;
  context.globalAlpha = 0.25;
  context.beginPath();
  depth.forEach(({ at_mm: at, p05_mm: p05 }, i) => {
    if (i === 0) context.moveTo(x(fromUnit(at, 'mm')), y(p05));
    else context.lineTo(x(fromUnit(at, 'mm')), y(p05));
  });
  for (const { at_mm: at, p95_mm: p95 } of [...depth].reverse())
    context.lineTo(x(fromUnit(at, 'mm')), y(p95));
  context.fill();
  context.globalAlpha = 1;
  context.strokeStyle = ink.accent;
  context.lineWidth = 2;
  context.beginPath();
  depth.forEach(({ at_mm: at, p50_mm: p50 }, i) => {
    if (i === 0) context.moveTo(x(fromUnit(at, 'mm')), y(p50));
    else context.lineTo(x(fromUnit(at, 'mm')), y(p50));
  });
  context.stroke();
  if (wanted !== null) {
    context.strokeStyle = ink.ink;
    context.lineWidth = 1;
    for (const [mm, dash] of [
      [wanted.least_mm, [6, 4]],
      [wanted.most_mm, [6, 4]],
      [wanted.depth_mm, []],
    ] as const) {
      context.setLineDash([...dash]);
      context.beginPath();
      context.moveTo(left, y(mm));
      context.lineTo(left + width, y(mm));
      context.stroke();
    }
    context.setLineDash([]);
  }
  context.restore();
  paintFrame(context, { top, width, height, ends: [labels(0), labels(deepest)] }, ink);
}

/** Kinds of events that leave a mark on the groove or cast doubt on the readings. */
const PLAIN = new Set(['touch_down', 'electrode_change', 'restart_short']);

/** Where something lies on the strip: in time, and on the seam where that is known. */
interface Span {
  readonly from_mm: number | null;
  readonly to_mm: number | null;
  readonly start_s: number;
  readonly end_s: number;
}

/** One pass as a row of the strip, with its events. */
export interface PassRow {
  readonly label: string;
  readonly pass: Span;
  readonly events: readonly (Span & { readonly kind: string })[];
}

/** The passes of a run as rows; those of another run bear its name. */
export function passRows(
  run: {
    readonly passes: readonly (Span & { readonly number: number })[];
    readonly events: readonly (Span & { readonly kind: string; readonly pass: number | null })[];
  },
  name?: string,
): PassRow[] {
  return run.passes.map((pass) => ({
    label: name === undefined ? `Pass ${pass.number}` : `${shortened(name)} ${pass.number}`,
    pass,
    events: run.events.filter((event) => event.pass === pass.number),
  }));
}

const LABEL_MOST = 10;

function shortened(name: string): string {
  return name.length > LABEL_MOST ? `${name.slice(0, LABEL_MOST - 1)}…` : name;
}

/** Draws each pass as a bar, one under the other, with its events as marks. */
export function paintPasses(
  context: CanvasRenderingContext2D,
  rows: readonly PassRow[],
  spanOf: (of: Span) => readonly [number, number] | undefined,
  top: number,
  width: number,
  ink: StripInk,
): void {
  const { passes: height, left } = LANE;
  const clip = (at: number): number => Math.min(left + width, Math.max(left, at));
  rows.forEach(({ label, pass, events }, row) => {
    const y = top + row * height;
    context.fillStyle = ink.soft;
    context.textAlign = 'right';
    context.textBaseline = 'middle';
    context.fillText(label, left - 6, y + height / 2);
    const bar = spanOf(pass);
    if (bar === undefined) return;
    const [a, b] = [clip(Math.min(...bar)), clip(Math.max(...bar))];
    context.fillStyle = ink.wash;
    context.fillRect(a, y + 4, b - a, height - 8);
    for (const event of events) {
      const span = spanOf(event);
      if (span === undefined) continue;
      const [from, to] = [Math.min(...span), Math.max(...span)];
      if (to < left || from > left + width) continue;
      const bad = !PLAIN.has(event.kind);
      context.fillStyle = bad ? ink.attention : ink.ink;
      const x = clip(from);
      const wide = Math.max(bad ? 3 : 2, clip(to) - x);
      // by shape too, not by colour alone: what is bad fills the height of the row
      context.fillRect(x, bad ? y + 1 : y + 6, wide, bad ? height - 2 : height - 12);
    }
  });
}
