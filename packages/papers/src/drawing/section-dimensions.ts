import type { Job, UnitSystem } from '@furrow/engine';
import { drawnLength, drawnNumber } from '../words/index.ts';
import type { DrawingPoint, Mark } from './drawing.ts';
import { heightOf, type SectionFrame, type SectionShape } from './section-frame.ts';

/** What the dimensions of a section are drawn from. */
export interface SectionDimensionInput {
  readonly groove: Job['groove'];
  readonly plate: Job['plate'];
  readonly frame: SectionFrame;
  readonly shape: SectionShape;
  readonly units: UnitSystem;
  /** Size of the letters [drawing unit]. */
  readonly size: number;
  /** Lines of text at the depth, and at the ligament. */
  readonly left: readonly string[];
  readonly right: readonly string[];
}

/** Dimension lines of a section: depth at the left, width above, ligament at the right. */
export function sectionDimensions(input: SectionDimensionInput): Mark[] {
  const { groove, frame, shape, size } = input;
  const half = shape.halfWidth * frame.scale;
  const wantedY = frame.surface + groove.depth.wanted * frame.scale;
  const floorY = frame.surface + shape.floorDepth * frame.scale;
  const depthX = frame.centre - half - 1.2 * size;
  const ligamentX = frame.centre + half + 1.2 * size;
  return [
    ...upright({ x: depthX, from: frame.surface, to: wantedY, reach: frame.centre, size }),
    ...column(input.left, { x: depthX - 0.6 * size, y: (frame.surface + wantedY) / 2 }, 'end', input),
    ...upright({ x: ligamentX, from: floorY, to: frame.back, reach: frame.centre, size }),
    ...column(input.right, { x: ligamentX + 0.6 * size, y: (floorY + frame.back) / 2 }, 'start', input),
    ...widthMarks(input),
  ];
}

interface Upright {
  readonly x: number;
  readonly from: number;
  readonly to: number;
  /** Where the thin line to the dimensioned point ends. */
  readonly reach: number;
  readonly size: number;
}

function upright({ x, from, to, reach, size }: Upright): Mark[] {
  const beyond = x < reach ? -0.4 * size : 0.4 * size;
  // the thin line starts at the root, which is `to` for the depth and `from` for the ligament
  const rootY = x < reach ? to : from;
  return [
    {
      kind: 'line',
      role: 'dimension',
      from: { x: reach, y: rootY },
      to: { x: x + beyond, y: rootY },
    },
    { kind: 'dimension', role: 'dimension', from: { x, y: from }, to: { x, y: to }, arrow: 0.6 * size },
  ];
}

/** Lines of text under each other, as near to a height as lines across the plate allow. */
function column(
  lines: readonly string[],
  at: DrawingPoint,
  anchor: 'start' | 'end',
  input: SectionDimensionInput,
): Mark[] {
  const { size } = input;
  const pitch = 1.25 * size;
  const top = freeTop(at.y, lines.length * pitch, input);
  return lines.map((text, index) => ({
    kind: 'text',
    role: 'dimension',
    at: { x: at.x, y: top + (index + 0.8) * pitch },
    text,
    anchor,
    size,
  }));
}

/** Top of a block of text that meets neither the break nor the line of the ligament, where there is room. */
function freeTop(
  middle: number,
  height: number,
  { frame, plate, groove, size }: SectionDimensionInput,
): number {
  const ligament = heightOf(frame, plate.thickness, plate.thickness - groove.ligament_least);
  const cuts = [
    { from: frame.surface, to: frame.surface },
    ...(ligament === undefined ? [] : [{ from: ligament, to: ligament }]),
    ...(frame.gap === undefined ? [] : [{ from: frame.gap.above, to: frame.gap.below }]),
    { from: frame.back, to: frame.back },
  ].sort((a, b) => a.from - b.from);
  const wanted = middle - height / 2;
  let best: number | undefined;
  for (let index = 0; index + 1 < cuts.length; index += 1) {
    const least = cuts[index]!.to + 0.3 * size;
    const most = cuts[index + 1]!.from - 0.3 * size - height;
    if (most < least) continue;
    const candidate = Math.min(most, Math.max(least, wanted));
    if (best === undefined || Math.abs(candidate - wanted) < Math.abs(best - wanted)) best = candidate;
  }
  return best ?? Math.max(frame.surface + 0.2 * size, wanted);
}

function widthMarks({ groove, frame, units, size }: SectionDimensionInput): Mark[] {
  const half = (groove.width.most / 2) * frame.scale;
  const y = frame.surface - 1.1 * size;
  const left = { x: frame.centre - half, y };
  const right = { x: frame.centre + half, y };
  const up = ({ x }: DrawingPoint): Mark => ({
    kind: 'line',
    role: 'dimension',
    from: { x, y: frame.surface },
    to: { x, y: y - 0.4 * size },
  });
  const text = `width ${drawnNumber(groove.width.least, units)} to ${drawnLength(groove.width.most, units)}`;
  return [
    up(left),
    up(right),
    { kind: 'dimension', role: 'dimension', from: left, to: right, arrow: 0.6 * size },
    {
      kind: 'text',
      role: 'dimension',
      at: { x: frame.centre, y: y - 0.55 * size },
      text,
      anchor: 'middle',
      size,
    },
  ];
}
