import type { Job, UnitSystem } from '@furrow/engine';
import type { DrawingPoint, Mark } from './drawing.ts';
import { fineLength, fineNumber } from './length-text.ts';
import type { SectionFrame, SectionShape } from './section-frame.ts';

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

/** Lines of text under each other, centred on a height but kept inside the plate. */
function column(
  lines: readonly string[],
  at: DrawingPoint,
  anchor: 'start' | 'end',
  { frame, size }: SectionDimensionInput,
): Mark[] {
  const pitch = 1.25 * size;
  const height = lines.length * pitch;
  const top = Math.max(
    frame.surface + 0.2 * size,
    Math.min(at.y - height / 2, frame.back - height - 0.2 * size),
  );
  return lines.map((text, index) => ({
    kind: 'text',
    role: 'dimension',
    at: { x: at.x, y: top + (index + 0.8) * pitch },
    text,
    anchor,
    size,
  }));
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
  const text = `width ${fineNumber(groove.width.least, units)} to ${fineLength(groove.width.most, units)}`;
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
