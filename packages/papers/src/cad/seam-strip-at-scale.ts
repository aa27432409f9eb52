import {
  formatAmount,
  formatStated,
  fromUnit,
  type Job,
  type Plan,
  type PlanPass,
  type UnitSystem,
} from '@furrow/engine';
import { axisText, lengthAxis } from '../drawing/index.ts';
import type { ScaleDrawing, ScaleItem, ScaleLayer, ScalePoint } from './scale-drawing.ts';

/** What the seam strip is drawn of. */
export interface SeamStripAtScaleInput {
  readonly job: Job;
  readonly plan: Plan;
  readonly units: UnitSystem;
}

/** Draws the seam unrolled at full length: x from its start; the lanes under each other are not to scale. */
export function seamStripAtScale({ job, plan, units }: SeamStripAtScaleInput): ScaleDrawing {
  const { length } = job.seam;
  const runOut = Math.max(0, (fromUnit(plan.pass_length_mm, 'mm') - length) / 2);
  const height = Math.max(0.003, (length + 2 * runOut) / 150);
  const lanes = lanesOf(plan);
  const foot = -(lanes.length + 0.5) * PITCH * height;
  const items: ScaleItem[] = [
    line('SEAM', [
      { x: 0, y: 0 },
      { x: length, y: 0 },
    ]),
    ...[0, length].map((x) =>
      line('AXIS', [
        { x, y: 0 },
        { x, y: foot },
      ]),
    ),
    ...lanes.flatMap((lane, index) => {
      const y = -(index + 1) * PITCH * height;
      return 'stations' in lane
        ? stationItems(lane.stations, y, { height, units, runOut })
        : passItems(lane, plan, y, { height, units, runOut, length });
    }),
    ...axisItems(length, foot, height, units),
  ];
  return {
    title: `Seam strip: ${job.title}`,
    description: 'Full size along the seam, x from its start; the lanes under each other are not to scale.',
    units,
    textHeight: height,
    items,
  };
}

/** Distance of the lanes as a multiple of the text's height [-]. */
const PITCH = 3;

type Lane = PlanPass | { readonly stations: readonly number[] };

interface Sheet {
  readonly height: number;
  readonly units: UnitSystem;
  /** What a pass runs beyond each end of the seam [m]. */
  readonly runOut: number;
}

/** Passes in the order of the work, with the stop to gauge after the last of a layer. */
function lanesOf(plan: Plan): Lane[] {
  return plan.passes.flatMap((pass, index): Lane[] => {
    if (plan.passes[index + 1]?.layer === pass.layer) return [pass];
    const stops = plan.gauge_stops.filter((stop) => stop.after_layer === pass.layer);
    return [pass, ...stops.map((stop) => ({ stations: stop.station_positions_mm }))];
  });
}

function line(layer: ScaleLayer, points: readonly ScalePoint[], closed = false): ScaleItem {
  return { kind: 'line', layer, points, closed };
}

function text(at: ScalePoint, words: string, anchor: 'start' | 'middle' | 'end', height: number): ScaleItem {
  return { kind: 'text', layer: 'TEXT', at, text: words, anchor, height };
}

function box(layer: ScaleLayer, from: number, to: number, y: number, half: number): ScaleItem {
  return line(
    layer,
    [
      { x: from, y: y - half },
      { x: to, y: y - half },
      { x: to, y: y + half },
      { x: from, y: y + half },
    ],
    true,
  );
}

function passItems(
  pass: PlanPass,
  plan: Plan,
  y: number,
  { height, units, runOut, length }: Sheet & { readonly length: number },
): ScaleItem[] {
  const half = 0.6 * height;
  const setting = pass.set_by_gauge
    ? 'travel by gauge'
    : formatStated(pass.travel_mm_per_min, 'mm/min', units);
  const changes = plan.electrode_changes.filter((change) => change.pass === pass.number);
  return [
    box('PASS', 0, length, y, half),
    ...(runOut > 1e-9
      ? [box('RUN_OUT', -runOut, 0, y, half), box('RUN_OUT', length, length + runOut, y, half)]
      : []),
    line(
      'START',
      [
        { x: -runOut, y: y + half },
        { x: -runOut + 1.4 * half, y },
        { x: -runOut, y: y - half },
      ],
      true,
    ),
    ...changes.map(({ at_mm }) => {
      const x = fromUnit(at_mm, 'mm');
      return line(
        'ELECTRODE_CHANGE',
        [
          { x, y: y + half },
          { x: x + half, y },
          { x, y: y - half },
          { x: x - half, y },
        ],
        true,
      );
    }),
    text(
      { x: -runOut - height, y: y - 0.5 * height },
      `pass ${pass.number}, layer ${pass.layer}, ${setting}`,
      'end',
      height,
    ),
  ];
}

function stationItems(stations: readonly number[], y: number, { height, units, runOut }: Sheet): ScaleItem[] {
  return [
    ...stations.flatMap((station) => {
      const x = fromUnit(station, 'mm');
      return [
        line(
          'GAUGE_STATION',
          [
            { x: x - 0.6 * height, y: y + 0.6 * height },
            { x: x + 0.6 * height, y: y + 0.6 * height },
            { x, y: y - 0.6 * height },
          ],
          true,
        ),
        text({ x: x + height, y: y - 0.5 * height }, formatAmount(x, 'length', units), 'start', 0.9 * height),
      ];
    }),
    text({ x: -runOut - height, y: y - 0.5 * height }, 'gauge', 'end', height),
  ];
}

function axisItems(length: number, foot: number, height: number, units: UnitSystem): ScaleItem[] {
  const axis = lengthAxis(length, 14, units);
  const items: ScaleItem[] = [
    line('AXIS', [
      { x: 0, y: foot },
      { x: length, y: foot },
    ]),
  ];
  for (let index = 0; index * axis.step <= length * (1 + 1e-9); index += 1) {
    const x = index * axis.step;
    items.push(
      line('AXIS', [
        { x, y: foot },
        { x, y: foot - 0.6 * height },
      ]),
      text({ x, y: foot - 2 * height }, `${axisText(axis, x)} ${axis.unit}`, 'middle', height),
    );
  }
  return items;
}
