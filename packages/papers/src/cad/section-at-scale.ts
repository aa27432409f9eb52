import {
  formatAmount,
  formatStated,
  fromUnit,
  type Job,
  type Plan,
  targetOutline,
  type UnitSystem,
} from '@furrow/engine';
import { fineNumber, fineStated } from '../words/index.ts';
import { levelDimension, uprightDimension } from './dimension-items.ts';
import type { ScaleDrawing, ScaleItem, ScaleLayer, ScalePoint } from './scale-drawing.ts';

/** What the section is drawn of. */
export interface SectionAtScaleInput {
  readonly job: Job;
  readonly plan?: Plan | undefined;
  readonly units: UnitSystem;
}

/** Draws the section at full size: x from the groove's centre line, y up from the plate's surface. */
export function sectionAtScale({ job, plan, units }: SectionAtScaleInput): ScaleDrawing {
  const { groove, plate } = job;
  const wanted = points(targetOutline(groove, 'wanted'));
  const least = points(targetOutline(groove, 'least'));
  const most = points(targetOutline(groove, 'most'));
  const floors = floorsOf(plan);
  const half = Math.max(
    groove.width.most / 2,
    ...[...wanted, ...most, ...floors.flatMap(({ outline }) => outline)].map(({ x }) => Math.abs(x)),
  );
  const height = Math.max(0.0015, Math.min(plate.thickness / 12, half / 5));
  const edge = half + Math.max(0.6 * half, 16 * height);
  const back = -plate.thickness;
  const items: ScaleItem[] = [
    closed('PLATE', [
      { x: -edge, y: 0 },
      ...wanted,
      { x: edge, y: 0 },
      { x: edge, y: back },
      { x: -edge, y: back },
    ]),
    closed('WANTED', wanted),
    closed('LEAST_ACCEPTED', least),
    closed('MOST_ACCEPTED', most),
    ...floors.map(({ layer, outline }) => closed(layer, outline)),
    {
      kind: 'line',
      layer: 'LIGAMENT',
      closed: false,
      points: [
        { x: -edge, y: back + groove.ligament_least },
        { x: edge, y: back + groove.ligament_least },
      ],
    },
    ...dimensions(job, units, { half, edge, height, wanted }),
    ...words(job, plan, units, { edge, height, back }),
  ];
  return {
    title: `Section of the groove: ${job.title}`,
    description: 'Full size; x from the centre line of the groove, y up from the surface of the plate.',
    units,
    textHeight: height,
    items,
  };
}

function points(outline: readonly { readonly offset: number; readonly depth: number }[]): ScalePoint[] {
  return outline.map(({ offset, depth }) => ({ x: offset, y: depth === 0 ? 0 : -depth }));
}

function closed(layer: ScaleLayer, outline: readonly ScalePoint[]): ScaleItem {
  return { kind: 'line', layer, points: outline, closed: true };
}

/** The floor to expect and its band, as far as they lie below the surface. */
function floorsOf(plan: Plan | undefined): { layer: ScaleLayer; outline: ScalePoint[] }[] {
  if (plan === undefined) return [];
  const { offset_mm, depth_p05_mm, depth_p50_mm, depth_p95_mm } = plan.section;
  const floor = (layer: ScaleLayer, depths: readonly number[]) => {
    const first = depths.findIndex((depth) => depth > 0);
    const last = depths.findLastIndex((depth) => depth > 0);
    const outline = offset_mm
      .map((offset, index) => ({
        offset: fromUnit(offset, 'mm'),
        depth: fromUnit(Math.max(0, depths[index] ?? 0), 'mm'),
      }))
      .slice(Math.max(0, first - 1), last + 2);
    return first < 0 || outline.length < 3 ? [] : [{ layer, outline: points(outline) }];
  };
  return [
    ...floor('EXPECTED', depth_p50_mm),
    ...floor('EXPECTED_SHALLOW', depth_p05_mm),
    ...floor('EXPECTED_DEEP', depth_p95_mm),
  ];
}

function dimensions(
  { groove, plate }: Job,
  units: UnitSystem,
  {
    half,
    edge,
    height,
    wanted,
  }: { half: number; edge: number; height: number; wanted: readonly ScalePoint[] },
): ScaleItem[] {
  const { depth, width } = groove;
  const root = { x: 0, y: -depth.wanted };
  const back = -plate.thickness;
  const wide = Math.max(...wanted.map(({ x }) => x));
  return [
    ...levelDimension(
      {
        from: { x: -wide, y: 0 },
        to: { x: wide, y: 0 },
        text: `${formatAmount(2 * wide, 'depth', units)} (${fineNumber(width.least, units)} to ${fineNumber(width.most, units)})`,
        height,
      },
      2 * height,
    ),
    ...uprightDimension(
      {
        from: { x: -half, y: 0 },
        to: root,
        text: `${formatAmount(depth.wanted, 'depth', units)} +${fineNumber(depth.plus, units)} −${fineNumber(depth.minus, units)}`,
        height,
      },
      -half - 2 * height,
    ),
    ...uprightDimension(
      {
        from: { x: edge, y: 0 },
        to: { x: edge, y: back },
        text: formatAmount(plate.thickness, 'depth', units),
        height,
      },
      edge + 2 * height,
    ),
    ...uprightDimension(
      {
        from: { x: half, y: back + groove.ligament_least },
        to: { x: half, y: back },
        text: `≥ ${formatAmount(groove.ligament_least, 'depth', units)}`,
        height,
      },
      half + 2 * height,
    ),
  ];
}

function words(
  job: Job,
  plan: Plan | undefined,
  units: UnitSystem,
  { edge, height, back }: { edge: number; height: number; back: number },
): ScaleItem[] {
  const { groove, plate } = job;
  const lines = [
    job.title,
    `${plate.material.replaceAll('_', ' ')}, ${formatAmount(plate.thickness, 'length', units)} thick`,
    ...(groove.root_radius_least > 0
      ? [`root radius at least ${formatAmount(groove.root_radius_least, 'depth', units)}`]
      : []),
    ...(plan === undefined
      ? []
      : [
          `expected floor ${formatStated(plan.floor_depth_mm.p50, 'mm', units)}, 90 in 100 from ` +
            `${fineStated(plan.floor_depth_mm.p05, units)} to ${fineStated(plan.floor_depth_mm.p95, units)}`,
        ]),
  ];
  return lines.map((text, index) => ({
    kind: 'text',
    layer: 'TEXT',
    at: { x: -edge, y: back - (2.2 + 1.7 * index) * height },
    text,
    anchor: 'start',
    height,
  }));
}
