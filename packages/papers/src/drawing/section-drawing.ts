import { formatAmount, formatStated, type UnitSystem } from '@furrow/engine';
import { drawnLength, drawnNumber, drawnTolerance, fineNumber, fineStated } from '../words/index.ts';
import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { hatch } from './hatch.ts';
import { drawLegend, type LegendEntry, legendRowHeight, legendRows } from './legend.ts';
import { scaleBar } from './scale-bar.ts';
import { sectionDimensions } from './section-dimensions.ts';
import {
  heightOf,
  type OutlinePoint,
  type SectionFrame,
  type SectionShape,
  type SectionSubject,
  sectionFrame,
  sectionShape,
} from './section-frame.ts';
import { textWidth } from './text-width.ts';

/** What the section is drawn of, and how large. */
export interface SectionDrawingInput extends SectionSubject {
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 200. */
  readonly width: number;
  /** Height [drawing unit], at least 120. */
  readonly height: number;
}

/** Draws the groove cut across the seam: what is wanted, what is accepted and, with a plan, what to expect. */
export function sectionDrawing(input: SectionDrawingInput): Drawing {
  const { groove, plate, plan, units } = input;
  const width = Math.max(200, input.width);
  const height = Math.max(120, input.height);
  const size = Math.min(14, Math.max(8.5, Math.min(width / 46, height / 20)));
  const shape = sectionShape(input);
  const { left, right } = sideTexts(input);
  const leftWidth = Math.max(...left.map((text) => textWidth(text, size))) + 2.6 * size;
  const rightWidth = Math.max(...right.map((text) => textWidth(text, size))) + 2.6 * size;
  const pad = 0.4 * size;
  const entries = legendEntries(shape, size);
  const rows = legendRows(entries, width - 2 * pad - 9 * size, size);
  const legendTop = height - rows.length * legendRowHeight(size) - pad;
  const frame = sectionFrame(shape, plate.thickness, {
    left: leftWidth,
    right: width - rightWidth,
    top: 3 * size,
    bottom: legendTop - 0.8 * size,
    gapHeight: 0.9 * size,
  });
  const edges = { left: pad, right: width - pad };
  return {
    width,
    height,
    title: 'Section of the groove',
    description: describe(input),
    marks: [
      ...plateMarks(shape, frame, edges, size),
      ...outlineMarks(shape, frame, size),
      ...ligamentMarks(input, frame, edges),
      ...sectionDimensions({ groove, plate, frame, shape, units, size, left, right }),
      ...drawLegend(rows, { x: pad, y: legendTop }, size),
      ...scaleBar(frame.scale, units, { x: width - pad, y: legendTop + legendRowHeight(size) / 2 }, size),
      ...(plan === undefined ? [] : expectedText(input, shape, frame, size)),
    ],
  };
}

/** Texts beside the groove: the depth on the left, the ligament on the right. */
function sideTexts({ groove, plan, units }: SectionDrawingInput): { left: string[]; right: string[] } {
  const { wanted, plus, minus } = groove.depth;
  const left = ['depth', drawnLength(wanted, units), drawnTolerance(plus, minus, units)];
  const right = ['plate left', `≥ ${drawnLength(groove.ligament_least, units)}`];
  if (plan !== undefined) right.push(`expect ${fineStated(plan.ligament_mm.p50, units)}`);
  return { left, right };
}

function place(frame: SectionFrame, points: readonly OutlinePoint[]): DrawingPoint[] {
  return points.map(({ offset, depth }) => ({
    x: frame.centre + offset * frame.scale,
    y: frame.surface + depth * frame.scale,
  }));
}

function plateMarks(
  shape: SectionShape,
  frame: SectionFrame,
  edges: { left: number; right: number },
  size: number,
): Mark[] {
  const removed = place(frame, shape.floor?.median ?? shape.wanted);
  const { surface, back, gap } = frame;
  const corner = (x: number, y: number): DrawingPoint => ({ x, y });
  const bottom = gap?.above ?? back;
  const top = [
    corner(edges.left, surface),
    ...removed,
    corner(edges.right, surface),
    corner(edges.right, bottom),
    corner(edges.left, bottom),
  ];
  const marks: Mark[] = [{ kind: 'area', role: 'plate', points: top }];
  if (gap !== undefined) {
    marks.push({
      kind: 'area',
      role: 'plate',
      points: [
        corner(edges.left, gap.below),
        corner(edges.right, gap.below),
        corner(edges.right, back),
        corner(edges.left, back),
      ],
    });
    for (const y of [gap.above, gap.below]) marks.push(breakLine(edges, y, size));
  }
  const line = (from: DrawingPoint, to: DrawingPoint): Mark => ({ kind: 'line', role: 'surface', from, to });
  marks.push(
    line(corner(edges.left, surface), removed[0] ?? corner(edges.right, surface)),
    line(removed.at(-1) ?? corner(edges.left, surface), corner(edges.right, surface)),
    line(corner(edges.left, back), corner(edges.right, back)),
  );
  return marks;
}

/** A break: a straight line with one zigzag in the middle of each half, as on any workshop drawing. */
function breakLine(edges: { left: number; right: number }, y: number, size: number): Mark {
  const points: DrawingPoint[] = [{ x: edges.left, y }];
  for (const share of [0.2, 0.8]) {
    const x = edges.left + share * (edges.right - edges.left);
    points.push(
      { x: x - 0.6 * size, y },
      { x: x - 0.2 * size, y: y - 0.35 * size },
      { x: x + 0.2 * size, y: y + 0.35 * size },
      { x: x + 0.6 * size, y },
    );
  }
  points.push({ x: edges.right, y });
  return { kind: 'polyline', role: 'break', points };
}

function outlineMarks(shape: SectionShape, frame: SectionFrame, size: number): Mark[] {
  const polyline = (role: MarkRole, points: readonly OutlinePoint[]): Mark => ({
    kind: 'polyline',
    role,
    points: place(frame, points),
  });
  const tolerance = [...place(frame, shape.most), ...place(frame, shape.least).reverse()];
  const marks: Mark[] = [
    { kind: 'area', role: 'tolerance', points: tolerance },
    polyline('tolerance-limit', shape.least),
    polyline('tolerance-limit', shape.most),
  ];
  if (shape.floor !== undefined) {
    const band = [...place(frame, shape.floor.deep), ...place(frame, shape.floor.shallow).reverse()];
    marks.push(
      { kind: 'area', role: 'floor-band', points: band },
      ...hatch(band, 0.55 * size, 'floor-hatch'),
    );
  }
  marks.push(polyline('target', shape.wanted));
  if (shape.floor !== undefined) marks.push(polyline('floor-median', shape.floor.median));
  if (shape.measured !== undefined) marks.push(polyline('course', shape.measured));
  // one that lies beyond the picture is marked at its border
  const [top, bottom] = [frame.surface - 2 * size, frame.surface + (shape.deepest * frame.scale + size)];
  for (const { x, y } of place(frame, shape.wild))
    marks.push(...crossMarks({ x, y: Math.min(bottom, Math.max(top, y)) }, 0.35 * size));
  return marks;
}

/** A wild point: a cross. */
function crossMarks({ x, y }: DrawingPoint, half: number): Mark[] {
  return [-1, 1].map((sign) => ({
    kind: 'line',
    role: 'course-below',
    from: { x: x - half, y: y - sign * half },
    to: { x: x + half, y: y + sign * half },
  }));
}

function ligamentMarks(
  { groove, plate }: SectionDrawingInput,
  frame: SectionFrame,
  edges: { left: number; right: number },
): Mark[] {
  const y = heightOf(frame, plate.thickness, plate.thickness - groove.ligament_least);
  if (y === undefined) return [];
  return [{ kind: 'line', role: 'ligament', from: { x: edges.left, y }, to: { x: edges.right, y } }];
}

/** The expected depth in words: inside the groove where no line runs through them, else in the plate below it. */
function expectedText(
  { groove, plate, plan, units }: SectionDrawingInput,
  shape: SectionShape,
  frame: SectionFrame,
  size: number,
): Mark[] {
  if (plan === undefined) return [];
  const words = ['expect', formatStated(plan.floor_depth_mm.p50, 'mm', units)];
  const line = (text: string, baseline: number): Mark => ({
    kind: 'text',
    role: 'floor-median',
    at: { x: frame.centre, y: baseline },
    text,
    anchor: 'middle',
    size,
  });
  const half = Math.max(...words.map((text) => textWidth(text, size))) / 2 / frame.scale;
  const outlines = [shape.least, shape.wanted, ...(shape.floor === undefined ? [] : [shape.floor.shallow])];
  const clear = Math.min(...outlines.map((outline) => shallowestWithin(outline, half))) * frame.scale;
  if (clear >= 3.2 * size) {
    return words.map((text, index) => line(text, frame.surface + (1.4 + 1.25 * index) * size));
  }
  const floor = frame.surface + shape.deepest * frame.scale;
  const ligament = heightOf(frame, plate.thickness, plate.thickness - groove.ligament_least);
  const below = [ligament, frame.gap?.above, frame.back].filter((y) => y !== undefined && y > floor);
  const room = Math.min(...(below as number[])) - floor;
  return room >= 2.2 * size ? [line(words.join(' '), floor + 1.5 * size)] : [];
}

/** Least depth of an outline within a distance of the centre line; 0 where it does not reach so far [m]. */
function shallowestWithin(outline: readonly OutlinePoint[], half: number): number {
  const [first, last] = [outline[0], outline.at(-1)];
  if (first === undefined || last === undefined || first.offset > -half || last.offset < half) return 0;
  const depths = outline.filter(({ offset }) => Math.abs(offset) <= half).map(({ depth }) => depth);
  for (const edge of [-half, half]) {
    const next = outline.findIndex(({ offset }) => offset >= edge);
    const [from, to] = [outline[next - 1] ?? first, outline[next] ?? last];
    const span = to.offset - from.offset;
    const share = span > 0 ? (edge - from.offset) / span : 0;
    depths.push(from.depth + share * (to.depth - from.depth));
  }
  return Math.min(...depths);
}

function legendEntries(shape: SectionShape, size: number): LegendEntry[] {
  const width = 2.2 * size;
  const line =
    (role: MarkRole) =>
    (left: DrawingPoint): readonly Mark[] => [
      { kind: 'line', role, from: left, to: { x: left.x + width, y: left.y } },
    ];
  const box = ({ x, y }: DrawingPoint): DrawingPoint[] => [
    { x, y: y - 0.45 * size },
    { x: x + width, y: y - 0.45 * size },
    { x: x + width, y: y + 0.45 * size },
    { x, y: y + 0.45 * size },
  ];
  const entries: LegendEntry[] = [
    { text: 'wanted', width, sample: line('target') },
    {
      text: 'accepted',
      width,
      sample: (left) => {
        const [a, b, c, d] = box(left) as [DrawingPoint, DrawingPoint, DrawingPoint, DrawingPoint];
        return [
          { kind: 'area', role: 'tolerance', points: [a, b, c, d] },
          { kind: 'line', role: 'tolerance-limit', from: a, to: b },
          { kind: 'line', role: 'tolerance-limit', from: d, to: c },
        ];
      },
    },
  ];
  if (shape.floor !== undefined) {
    entries.push(
      { text: 'expected floor', width, sample: line('floor-median') },
      {
        text: '90 in 100 fall here',
        width,
        sample: (left) => [
          { kind: 'area', role: 'floor-band', points: box(left) },
          ...hatch(box(left), 0.55 * size, 'floor-hatch'),
        ],
      },
    );
  }
  if (shape.measured !== undefined) entries.push({ text: 'measured', width, sample: line('course') });
  if (shape.wild.length > 0)
    entries.push({
      text: 'wild, does not count',
      width: size,
      sample: ({ x, y }) => crossMarks({ x: x + 0.5 * size, y }, 0.35 * size),
    });
  entries.push({ text: 'plate to keep', width, sample: line('ligament') });
  return entries;
}

function describe({ groove, plate, plan, units }: SectionDrawingInput): string {
  const { wanted, plus, minus } = groove.depth;
  const target =
    `Plate ${formatAmount(plate.thickness, 'depth', units)} thick. Wanted depth ${drawnLength(wanted, units)}, accepted from ` +
    `${fineNumber(wanted - minus, units)} to ${formatAmount(wanted + plus, 'depth', units)}; width at the surface ` +
    `${drawnNumber(groove.width.least, units)} to ${drawnLength(groove.width.most, units)}; at least ` +
    `${drawnLength(groove.ligament_least, units)} of plate left under the groove.`;
  if (plan === undefined) return target;
  const { p05, p50, p95 } = plan.floor_depth_mm;
  return (
    `${target} Expected deepest point ${formatStated(p50, 'mm', units)}; 90 times in 100 between ` +
    `${fineStated(p05, units)} and ${formatStated(p95, 'mm', units)}.`
  );
}
