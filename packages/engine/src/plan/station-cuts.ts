import {
  cutPass,
  type Floor,
  flatFloor,
  measureFloor,
  runOutLength,
  type SectionPoint,
} from '../groove/index.ts';
import type { Job } from '../job/index.ts';
import { betweenLayers } from './effort.ts';
import type { PassOutcome, PlanOutcome, RowOutcome, StopOutcome } from './outcome.ts';

/** Plate that the section must have left under the deepest floor [m]. */
const PLATE_LEFT = 1e-3;
/** Grid step of the floors handed to the field [m]. */
const FLOOR_STEP = 0.1e-3;

/** One pass of the median course of a plan, as it goes by a station. */
export interface StationCut {
  readonly pass: PassOutcome;
  /** Time since the first arc at which the torch is at the station, waits left out [s]. */
  readonly at: number;
  /** How long the arc lies over the station [s]. */
  readonly duration: number;
  /** Floor after the pass at the plan's median depth, from left to right. */
  readonly floor: readonly SectionPoint[];
  /** The same at the 95th percentile of the plan's depth: what lies behind gets hottest there. */
  readonly deepFloor: readonly SectionPoint[];
  /** Section that it takes off [m2]. */
  readonly area: number;
  /** Length across the section of the face that it newly cuts [m]. */
  readonly face: number;
}

/** What the passes are worked out from. */
export interface StationCutInput {
  readonly job: Job;
  readonly plan: PlanOutcome;
  /** Width of one pass [m]. */
  readonly passWidth: number;
  /** Place of the section from the start of the seam [m]. */
  readonly station: number;
}

/** The passes that go by a station [m] when every reading is the median one. */
function passesRun(plan: PlanOutcome, station: number): readonly PassOutcome[] {
  const run: PassOutcome[] = [];
  let depth = 0;
  for (let layer = 1; layer <= plan.layers; layer += 1) {
    const stop = plan.stops.find((each) => each.afterLayer === layer - 1);
    if (stop !== undefined && rowAt(stop, depth)?.action === 'done') break;
    const passes = plan.passes.filter(
      (pass) => pass.layer === layer && pass.from <= station && station <= pass.to,
    );
    run.push(...passes);
    depth += passes[0]?.depth.p50 ?? 0;
  }
  return run;
}

function rowAt({ table }: StopOutcome, reading: number): RowOutcome | undefined {
  return table.find(({ from, to }) => reading >= from && (to === undefined || reading < to));
}

/** Floors after each pass, scaled so that the deepest point at the end is the one wanted [m]. */
function floorsOf(passes: readonly PassOutcome[], wanted: number, width: number): readonly Floor[] {
  const outermost = Math.max(0, ...passes.map((pass) => Math.abs(pass.offset)));
  const halfWidth = outermost + width;
  const cut = (scale: number): Floor[] => {
    let floor = flatFloor(halfWidth, FLOOR_STEP);
    return passes.map((pass) => {
      floor = cutPass(floor, { offset: pass.offset, width, depth: pass.depth.p50 * scale });
      return floor;
    });
  };
  const deepest = (floors: readonly Floor[]): number => measureFloor(floors.at(-1)!).deepest;
  // Tracks side by side deepen each other, so one scale does not do: it is corrected once from what came out.
  const first = wanted / deepest(cut(1));
  return cut((first * wanted) / deepest(cut(first)));
}

/** The gouged stretch of a floor with the untouched point on either side of it. */
function lineOf({ first, step, depth }: Floor): SectionPoint[] {
  const points = Array.from(depth, (value, index) => ({ offset: first + index * step, depth: value }));
  const touched = (point: SectionPoint | undefined): boolean => (point?.depth ?? 0) > 0;
  return points.filter((point, i) => touched(point) || touched(points[i - 1]) || touched(points[i + 1]));
}

/** Length of the face that a pass has newly cut. */
function newFace({ depth, step }: Floor, before: Floor | undefined): number {
  let length = 0;
  for (let index = 1; index < depth.length; index += 1) {
    const cut = (place: number): boolean => depth[place]! > (before?.depth[place] ?? 0);
    if (cut(index) || cut(index - 1)) length += Math.hypot(step, depth[index]! - depth[index - 1]!);
  }
  return length;
}

/** Times since the first arc at which the torch comes by the station. */
function timesAt(passes: readonly PassOutcome[], { job, plan, station }: StationCutInput): number[] {
  const { rates } = job;
  const runOut = runOutLength(job.groove);
  const length = plan.passLength;
  let start = 0;
  return passes.map((pass, index) => {
    const { travel, dwell } = pass;
    const changes = plan.changes.filter((change) => change.pass === pass.number);
    const before = changes.filter((change) => change.at < station).length;
    const at = start + dwell + (station + runOut) / travel + before * rates.electrode_change_time;
    start += dwell + length / travel + changes.length * rates.electrode_change_time;
    start += length / rates.return_travel + rates.start_time;
    const next = passes[index + 1];
    if (next !== undefined && next.layer !== pass.layer) {
      const stations = plan.stops.find((stop) => stop.afterLayer === pass.layer)?.stations.length ?? 0;
      // A run-in is deepened over a short stretch, for which nothing is cleaned or set anew.
      start += stations * plan.pattern.tracks * rates.gauge_time + (plan.layers > 1 ? betweenLayers(job) : 0);
    }
    return at;
  });
}

/**
 * The passes of a plan as they go by a station, in the median course of the plan: what each cuts, and when.
 *
 * @param input - job, plan, width of a pass and the station [record], station from 0 to the length of the seam
 * @returns the passes that are run there [list]
 * @source geometry, as cutPass
 * @example
 * const plan = { ...demoAnswer.basis.plan, layers: 0 };
 * stationCuts({ job: demoJob.job, plan, passWidth: 0.014, station: 0 }) // => []
 */
export function stationCuts(input: StationCutInput): readonly StationCut[] {
  const { job, plan, passWidth: width } = input;
  const passes = passesRun(plan, input.station);
  if (passes.length === 0) return [];
  const floors = floorsOf(passes, plan.floorDepth.p50, width);
  const deepest = Math.min(plan.floorDepth.p95, job.plate.thickness - PLATE_LEFT);
  const deepFloors = floorsOf(passes, deepest, width);
  const areas = floors.map((floor) => measureFloor(floor).area);
  const times = timesAt(passes, input);
  return passes.map((pass, index) => ({
    pass,
    at: times[index]!,
    duration: plan.electrode.diameter / pass.travel,
    floor: lineOf(floors[index]!),
    deepFloor: lineOf(deepFloors[index]!),
    area: areas[index]! - (areas[index - 1] ?? 0),
    face: newFace(floors[index]!, floors[index - 1]),
  }));
}
