import { measureFloor } from '../groove/index.ts';
import { percentiles } from '../numeric/index.ts';
import { inUnit } from '../quantity/index.ts';
import { lossLength, predictDepth, startDwell } from '../removal/index.ts';
import { candidateOf } from './candidate-of.ts';
import { electrodeChanges } from './electrode-changes.ts';
import { trackOffset } from './pattern.ts';
import { type ReadingTable, rowOf } from './reading-table.ts';
import { gaugeStops } from './report-gauge.ts';
import type { ReportInput } from './report-input.ts';
import { limitsOf } from './report-limits.ts';
import { bandFloors, sectionBand } from './report-section.ts';
import type { Band, Plan, PlanPass, Spread } from './result.ts';
import type { Setup } from './setup.ts';
import type { Feasible } from './weigh.ts';

/** Writes a set-up out as a plan, every number with its unit. */
export function reportPlan(feasible: Feasible, input: ReportInput, dominated: boolean): Plan {
  const { job } = input;
  const { effort } = feasible;
  const { setup, outcomes, chances } = feasible.solved;
  const typical = typicalEnergies(setup, feasible);
  const deepest = percentiles(outcomes.deepest, BAND) as Triple;
  const width = percentiles(outcomes.width, BAND) as Triple;
  const floors = bandFloors(feasible, typical, deepest, percentiles(outcomes.width, [0.999])[0]!);
  const shape = measureFloor(floors.p50);
  const passes = passesOf(feasible, typical, input);
  const electrodes = spread(effort.electrodes);
  const floorDepth = bandOf(deepest);
  const thickness = inUnit(job.plate.thickness, 'mm');
  return {
    kind: setup.layers.some((rule) => rule.kind === 'table') ? 'gauge_and_adjust' : 'blind',
    dominated,
    electrode_diameter_mm: inUnit(setup.electrode.diameter, 'mm'),
    electrode_kind: setup.electrode.kind,
    tracks: setup.pattern.tracks,
    track_spacing_mm: inUnit(setup.pattern.spacing, 'mm'),
    layers: setup.layers.length,
    pass_length_mm: inUnit(feasible.task.run.passLength, 'mm'),
    passes,
    floor_depth_mm: floorDepth,
    least_depth_mm: bandOf(percentiles(outcomes.shallowest, BAND) as Triple),
    width_mm: bandOf(width),
    root_radius_mm: inUnit(shape.rootRadius ?? 0, 'mm'),
    wall_angle_deg: inUnit(shape.wallAngle, 'deg'),
    cusp_height_mm: inUnit(shape.cuspHeight, 'mm'),
    ligament_mm: { p05: thickness - floorDepth.p95, p50: thickness - floorDepth.p50 },
    assurance: {
      depth_reached: chances.reached,
      not_too_deep: chances.notTooDeep,
      ligament_kept: chances.ligamentKept,
      width_in_band: chances.widthInBand,
    },
    arc_time_s: spread(effort.arcTime),
    job_time_s: spread(effort.jobTime),
    cost: spread(effort.cost),
    whole_cost: spread(feasible.wholeCost),
    currency: job.rates.currency,
    electrodes_used: electrodes,
    arc_energy_kJ: inUnit(percentiles(effort.energy, [0.5])[0]!, 'kJ'),
    removed_mm3_per_mm: inUnit(shape.area, 'mm3_per_mm'),
    loss_length_mm: inUnit(
      lossLength(Math.max(...passes.map((pass) => pass.travel_mm_per_min)) / 60_000, job.kit.loss_window),
      'mm',
    ),
    gauge_stops: gaugeStops(feasible, input),
    electrode_changes: electrodeChanges(feasible, passes, input),
    limits: limitsOf(feasible, input, { width: width[1], electrodes: electrodes.p90 }, outcomes, shape),
    section: sectionBand(floors),
  };
}

/** Shares of a band's percentiles [-]. */
const BAND = [0.05, 0.5, 0.95] as const;
type Triple = [number, number, number];

/** A band of lengths [m], written in millimetres. */
function bandOf([p05, p50, p95]: Triple): Band {
  return { p05: inUnit(p05, 'mm'), p50: inUnit(p50, 'mm'), p95: inUnit(p95, 'mm') };
}

function spread(sample: Float64Array): Spread {
  const [p50, p90] = percentiles(sample, [0.5, 0.9]) as [number, number];
  return { p50, p90 };
}

/** ln specific energy of each layer when every reading is the median one; NaN: the layer is not run. */
function typicalEnergies(setup: Setup, feasible: Feasible): number[] {
  const energies: number[] = [];
  let depth = 0;
  for (const rule of setup.layers) {
    const energy = rule.kind === 'set' ? rule.logEnergy : rule.table.logEnergy[rowOf(rule.table, depth)]!;
    energies.push(energy);
    if (!Number.isNaN(energy)) depth += candidateOf(feasible.task, feasible.solved, energy, 0).passDepth;
  }
  return energies;
}

function passesOf(feasible: Feasible, typical: readonly number[], input: ReportInput): PlanPass[] {
  const { setup } = feasible.solved;
  const { job, posterior } = input;
  const passes: PlanPass[] = [];
  setup.layers.forEach((rule, layer) => {
    // Where the median reading asks for no more passes, the setting of the nearest row that does is shown.
    const energy = Number.isNaN(typical[layer]!)
      ? fallbackEnergy(rule.kind === 'table' ? rule.table : undefined)
      : typical[layer]!;
    const travel = setup.unitTravel * Math.exp(-energy);
    const depth = predictDepth(posterior, {
      diameter: setup.electrode.diameter,
      current: setup.current,
      voltage: setup.voltage,
      travel,
      pushAngle: job.kit.push_angle,
    });
    for (let track = 0; track < setup.pattern.tracks; track += 1) {
      passes.push({
        number: passes.length + 1,
        layer: layer + 1,
        track: track + 1,
        offset_mm: inUnit(trackOffset(setup.pattern, track), 'mm'),
        current_A: setup.current,
        arc_voltage_V: setup.voltage,
        push_angle_deg: inUnit(job.kit.push_angle, 'deg'),
        travel_mm_per_min: inUnit(travel, 'mm_per_min'),
        set_by_gauge: rule.kind === 'table',
        depth_mm: {
          p05: inUnit(depth.p05, 'mm'),
          p50: inUnit(depth.p50, 'mm'),
          p95: inUnit(depth.p95, 'mm'),
        },
        dwell_s: startDwell(setup.electrode.diameter, job.kit.push_angle, travel),
      });
    }
  });
  return passes;
}

function fallbackEnergy(table: ReadingTable | undefined): number {
  const run = table?.logEnergy.filter((value) => !Number.isNaN(value)) ?? [];
  return run.at(-1) ?? 0;
}
