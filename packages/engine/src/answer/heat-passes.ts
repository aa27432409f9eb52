import {
  cutPass,
  type Floor,
  flatFloor,
  measureFloor,
  runOutLength,
  type SectionPoint,
} from '../groove/index.ts';
import { type KeptHeat, keptHeat, type MeltingNeed } from '../heat/index.ts';
import type { Job } from '../job/index.ts';
import { predictWidth, type RemovalBelief } from '../removal/index.ts';
import type { GaugeStop, Plan, PlanPass } from '../result/index.ts';

const MM = 1e-3;
const MM_PER_MIN = MM / 60;
/** Plate that the section must have left under the deepest floor [m]. */
const PLATE_LEFT = 1e-3;
/** Grid step of the floors handed to the field [m]. */
const FLOOR_STEP = 0.1e-3;

/** One pass of the median course of a plan, as it goes by a station. */
export interface StationPass {
  readonly pass: PlanPass;
  /** Time since the first arc at which the torch is at the station, waits left out [s]. */
  readonly at: number;
  /** How long the arc lies over the station [s]. */
  readonly duration: number;
  /** Floor after the pass at the plan's median depth, from left to right. */
  readonly floor: readonly SectionPoint[];
  /** The same at the 95th percentile of the plan's depth: what lies behind gets hottest there. */
  readonly deepFloor: readonly SectionPoint[];
  readonly heat: KeptHeat;
}

/** What the passes are worked out from. */
export interface StationPassInput {
  readonly job: Job;
  readonly plan: Plan;
  readonly posterior: RemovalBelief;
  /** Place of the section from the start of the seam [m]. */
  readonly station: number;
  readonly need: MeltingNeed;
}

/** The passes that go by a station [mm] when every reading is the median one. */
function passesRun(plan: Plan, station: number): readonly PlanPass[] {
  const run: PlanPass[] = [];
  let depth = 0;
  for (let layer = 1; layer <= plan.layers; layer += 1) {
    const stop = plan.gauge_stops.find((each) => each.after_layer === layer - 1);
    if (stop !== undefined && rowAt(stop, depth)?.action === 'done') break;
    const passes = plan.passes.filter(
      (pass) => pass.layer === layer && pass.from_mm <= station && station <= pass.to_mm,
    );
    run.push(...passes);
    depth += passes[0]?.depth_mm.p50 ?? 0;
  }
  return run;
}

function rowAt(stop: GaugeStop, reading: number): GaugeStop['table'][number] | undefined {
  return stop.table.find(
    (row) => reading >= row.reading_from_mm && (row.reading_to_mm === null || reading < row.reading_to_mm),
  );
}

/** Floors after each pass, scaled so that the deepest point at the end is the one wanted [m]. */
function floorsOf(passes: readonly PlanPass[], wanted: number, width: number): readonly Floor[] {
  const outermost = Math.max(0, ...passes.map((pass) => Math.abs(pass.offset_mm))) * MM;
  const halfWidth = outermost + width;
  const cut = (scale: number): Floor[] => {
    let floor = flatFloor(halfWidth, FLOOR_STEP);
    return passes.map((pass) => {
      floor = cutPass(floor, { offset: pass.offset_mm * MM, width, depth: pass.depth_mm.p50 * MM * scale });
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
function faceLength({ depth, step }: Floor, before: Floor | undefined): number {
  let length = 0;
  for (let index = 1; index < depth.length; index += 1) {
    const cut = (place: number): boolean => depth[place]! > (before?.depth[place] ?? 0);
    if (cut(index) || cut(index - 1)) length += Math.hypot(step, depth[index]! - depth[index - 1]!);
  }
  return length;
}

/** Times since the first arc at which the torch comes by the station. */
function timesAt(passes: readonly PlanPass[], { job, plan, station }: StationPassInput): number[] {
  const { rates } = job;
  const runOut = runOutLength(job.groove);
  const length = plan.pass_length_mm * MM;
  let start = 0;
  return passes.map((pass, index) => {
    const travel = pass.travel_mm_per_min * MM_PER_MIN;
    const changes = plan.electrode_changes.filter((change) => change.pass === pass.number);
    const before = changes.filter((change) => change.at_mm * MM < station).length;
    const at = start + pass.dwell_s + (station + runOut) / travel + before * rates.electrode_change_time;
    start += pass.dwell_s + length / travel + changes.length * rates.electrode_change_time;
    start += length / rates.return_travel + rates.start_time;
    const next = passes[index + 1];
    if (next !== undefined && next.layer !== pass.layer) {
      const stations = plan.gauge_stops.find((stop) => stop.after_layer === pass.layer)?.stations ?? 0;
      start += stations * plan.tracks * rates.gauge_time;
    }
    return at;
  });
}

/** The passes of a plan as the plate feels them at a station, in the median course of the plan. */
export function stationPasses(input: StationPassInput): readonly StationPass[] {
  const { job, plan, posterior, need } = input;
  const passes = passesRun(plan, input.station / MM);
  const diameter = plan.electrode_diameter_mm * MM;
  const width = predictWidth(posterior, diameter).p50;
  const floors = floorsOf(passes, plan.floor_depth_mm.p50 * MM, width);
  const deepest = Math.min(plan.floor_depth_mm.p95 * MM, job.plate.thickness - PLATE_LEFT);
  const deepFloors = floorsOf(passes, deepest, width);
  const areas = floors.map((floor) => measureFloor(floor).area);
  const times = timesAt(passes, input);
  const stated = { least: job.heat.kept_least, most: job.heat.kept_most };
  return passes.map((pass, index) => {
    const travel = pass.travel_mm_per_min * MM_PER_MIN;
    const area = areas[index]! - (areas[index - 1] ?? 0);
    const face = faceLength(floors[index]!, floors[index - 1]);
    const duration = diameter / travel;
    const energy = { current: pass.current_A, voltage: pass.arc_voltage_V, travel, area, face, duration };
    return {
      pass,
      at: times[index]!,
      duration,
      floor: lineOf(floors[index]!),
      deepFloor: lineOf(deepFloors[index]!),
      heat: keptHeat(energy, need, stated),
    };
  });
}
