import { cutPass, type Floor, type FloorShape, flatFloor, measureFloor } from '../groove/index.ts';
import type { Job } from '../job/index.ts';
import { type Limit, type LimitFunction, limitOf, withSensitivity } from '../limit/index.ts';
import { percentiles } from '../numeric/index.ts';
import { inUnit } from '../quantity/index.ts';
import {
  lossLength,
  predictDepth,
  predictWear,
  type RemovalPosterior,
  startDwell,
} from '../removal/index.ts';
import { chancesOf } from './chance.ts';
import { type Effort, usableLength } from './effort.ts';
import { outlooks } from './gauge-table.ts';
import { trackOffset } from './pattern.ts';
import type {
  Band,
  ElectrodeChange,
  GaugeRow,
  GaugeStop,
  Plan,
  PlanPass,
  SectionBand,
  Spread,
} from './result.ts';
import { type ReadingTable, type RunOutcomes, rowOf, runPlan, type Setup } from './run-plan.ts';
import { candidateOf, depthDemand, energiesOf, type Feasible, withStations } from './search.ts';
import type { ShopDraws } from './shop-draws.ts';
import { tableQuestion } from './solve.ts';

/** Grid step of the drawn and measured section [m]. */
const SECTION_STEP = 0.1e-3;
/** Points of the section handed out [-]. */
const SECTION_POINTS = 161;

/** What a plan is reported from. */
export interface ReportInput {
  readonly job: Job;
  readonly posterior: RemovalPosterior;
  readonly limits: readonly LimitFunction[];
  /** Shops that had no part in solving, those that the set-up's chances are counted in. */
  readonly draws: ShopDraws;
}

/** Writes a set-up out as a plan, every number with its unit. */
export function reportPlan(feasible: Feasible, input: ReportInput): Plan {
  const { job } = input;
  const { effort } = feasible;
  const { setup, outcomes, chances } = feasible.solved;
  const typical = typicalEnergies(setup, feasible);
  const floors = {
    p05: medianFloor(feasible, typical, 0.05, outcomes),
    p50: medianFloor(feasible, typical, 0.5, outcomes),
    p95: medianFloor(feasible, typical, 0.95, outcomes),
  };
  const shape = measureFloor(floors.p50);
  const passes = passesOf(feasible, typical, input);
  const deepest = band(outcomes.deepest, 'mm');
  const thickness = inUnit(job.plate.thickness, 'mm');
  return {
    kind: setup.layers.some((rule) => rule.kind === 'table') ? 'gauge_and_adjust' : 'blind',
    electrode_diameter_mm: inUnit(setup.electrode.diameter, 'mm'),
    electrode_kind: setup.electrode.kind,
    tracks: setup.pattern.tracks,
    track_spacing_mm: inUnit(setup.pattern.spacing, 'mm'),
    layers: setup.layers.length,
    pass_length_mm: inUnit(feasible.task.run.passLength, 'mm'),
    passes,
    floor_depth_mm: deepest,
    least_depth_mm: band(outcomes.shallowest, 'mm'),
    width_mm: band(outcomes.width, 'mm'),
    root_radius_mm: inUnit(shape.rootRadius ?? 0, 'mm'),
    wall_angle_deg: inUnit(shape.wallAngle, 'deg'),
    cusp_height_mm: inUnit(shape.cuspHeight, 'mm'),
    ligament_mm: { p05: thickness - deepest.p95, p50: thickness - deepest.p50 },
    assurance: {
      depth_reached: chances.reached,
      not_too_deep: chances.notTooDeep,
      ligament_kept: chances.ligamentKept,
      width_in_band: chances.widthInBand,
    },
    arc_time_s: spread(effort.arcTime),
    job_time_s: spread(effort.jobTime),
    cost: spread(effort.cost),
    currency: job.rates.currency,
    electrodes_used: spread(effort.electrodes),
    arc_energy_kJ: inUnit(percentiles(effort.energy, [0.5])[0]!, 'kJ'),
    removed_mm3_per_mm: inUnit(shape.area, 'mm3_per_mm'),
    loss_length_mm: inUnit(
      lossLength(Math.max(...passes.map((pass) => pass.travel_mm_per_min)) / 60_000, job.kit.loss_window),
      'mm',
    ),
    gauge_stops: gaugeStops(feasible, input),
    electrode_changes: electrodeChanges(feasible, passes, input),
    limits: limitsOf(feasible, input, effort, outcomes, shape),
    section: sectionBand(floors),
  };
}

function band(sample: Float64Array, unit: 'mm'): Band {
  const [p05, p50, p95] = percentiles(sample, [0.05, 0.5, 0.95]) as [number, number, number];
  return { p05: inUnit(p05, unit), p50: inUnit(p50, unit), p95: inUnit(p95, unit) };
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

/**
 * A section whose deepest point is the given percentile of the deepest points, each layer and track scaled alike:
 * the same tracks, drawn shallower or deeper.
 */
function medianFloor(
  feasible: Feasible,
  typical: readonly number[],
  share: number,
  outcomes: RunOutcomes,
): Floor {
  const { task, solved, candidate } = feasible;
  const { pattern } = solved.setup;
  const halfWidth = percentiles(outcomes.width, [0.999])[0]! / 2 + candidate.passWidth / 2;
  const cuts = typical
    .filter((energy) => !Number.isNaN(energy))
    .map((energy) => candidateOf(task, solved, energy, 0).passDepth);
  const wanted = percentiles(outcomes.deepest, [share])[0]!;
  const gouged = (scale: number): Floor =>
    cuts.reduce(
      (floor, depth) => {
        let next = floor;
        for (let track = 0; track < pattern.tracks; track += 1) {
          next = cutPass(next, {
            offset: trackOffset(pattern, track),
            width: candidate.passWidth,
            depth: depth * scale,
          });
        }
        return next;
      },
      flatFloor(halfWidth, SECTION_STEP),
    );
  // Neighbouring tracks deepen each other a little, so the scale is corrected once from what came out.
  const first = wanted / cuts.reduce((sum, depth) => sum + depth, 0);
  const came = measureFloor(gouged(first)).deepest;
  return gouged(came > 0 ? (first * wanted) / came : first);
}

function sectionBand(floors: { p05: Floor; p50: Floor; p95: Floor }): SectionBand {
  const { first, step, depth } = floors.p50;
  const span = (depth.length - 1) * step;
  const offsets = Array.from(
    { length: SECTION_POINTS },
    (_, index) => first + (span * index) / (SECTION_POINTS - 1),
  );
  const read = (floor: Floor): number[] =>
    offsets.map((offset) =>
      inUnit(floor.depth[Math.min(depth.length - 1, Math.round((offset - first) / step))]!, 'mm'),
    );
  return {
    offset_mm: offsets.map((offset) => inUnit(offset, 'mm')),
    depth_p05_mm: read(floors.p05),
    depth_p50_mm: read(floors.p50),
    depth_p95_mm: read(floors.p95),
  };
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

/** Places of the stations: even, the outer ones half a gap from the ends, so that no end goes unseen. */
function stationPositions(length: number, stations: number): number[] {
  return Array.from({ length: stations }, (_, index) => inUnit((length * (index + 0.5)) / stations, 'mm'));
}

function gaugeStops(feasible: Feasible, input: ReportInput): GaugeStop[] {
  const { task, solved } = feasible;
  const { layers } = solved.setup;
  return layers.flatMap((rule, layer): GaugeStop[] => {
    if (rule.kind !== 'table') return [];
    return [
      {
        after_layer: layer,
        stations: rule.stations,
        station_positions_mm: stationPositions(task.run.passLength, rule.stations),
        reading_sd_mm: inUnit(task.run.readingSd, 'mm'),
        table: tableRows(feasible, layer, rule.table, rule.stations),
        stations_choice: stationsChoice(feasible, input),
      },
    ];
  });
}

function tableRows(feasible: Feasible, layer: number, table: ReadingTable, stations: number): GaugeRow[] {
  const { task, solved } = feasible;
  const { setup } = solved;
  const question = tableQuestion(task, setup.layers.slice(0, layer), stations);
  const outlookOf = outlooks(question);
  return table.readings.map((reading, row): GaugeRow => {
    const from = row === 0 ? 0 : table.edges[row - 1]!;
    const to = table.edges[row];
    const rowWidth = row === 0 || to === undefined ? 0 : to - from;
    const energy = table.logEnergy[row]!;
    const outlook = outlookOf(reading, rowWidth);
    const run = !Number.isNaN(energy);
    const forecast = run ? outlook.after(energy) : outlook.asItIs;
    const quantile = (share: number): number =>
      inUnit(run ? outlook.depthQuantile(energy, share) : reading, 'mm');
    return {
      reading_from_mm: inUnit(from, 'mm'),
      reading_to_mm: to === undefined ? null : inUnit(to, 'mm'),
      action: run ? 'run' : forecast.notTooDeep < 0.5 ? 'ask' : 'done',
      travel_mm_per_min: run ? inUnit(setup.unitTravel * Math.exp(-energy), 'mm_per_min') : null,
      expected_depth_mm: { p05: quantile(0.05), p50: quantile(0.5), p95: quantile(0.95) },
      depth_reached: forecast.reached,
      not_too_deep: forecast.notTooDeep,
    };
  });
}

function stationsChoice(feasible: Feasible, input: ReportInput): GaugeStop['stations_choice'] {
  const { job } = input;
  const most = job.kit.gauge.stations_most;
  const counts = [1, 2, 3, 4, 5, 8, 12, 20, 50].filter((count) => count <= most);
  if (!counts.includes(most)) counts.push(most);
  return counts.map((stations) => {
    const setup = { ...feasible.solved.setup, layers: withStations(feasible.solved.setup.layers, stations) };
    const chances = chancesOf(runPlan(setup, feasible.task.run, input.draws), depthDemand(job, 0));
    return { stations, depth_reached: chances.reached, not_too_deep: chances.notTooDeep };
  });
}

function electrodeChanges(
  feasible: Feasible,
  passes: readonly PlanPass[],
  input: ReportInput,
): ElectrodeChange[] {
  const { setup } = feasible.solved;
  const length = feasible.task.run.passLength;
  const usable = usableLength(setup.electrode);
  const wear = predictWear(input.posterior, setup.electrode.diameter, setup.current).p50;
  const changes: ElectrodeChange[] = [];
  let left = usable;
  for (const pass of passes) {
    const travel = pass.travel_mm_per_min / 60_000;
    left -= wear * pass.dwell_s;
    let at = 0;
    // The place where what is left of the electrode is burnt.
    while (at + (Math.max(0, left) / wear) * travel < length) {
      at += (Math.max(0, left) / wear) * travel;
      changes.push({ pass: pass.number, at_mm: inUnit(at, 'mm') });
      left = usable;
    }
    left -= ((length - at) / travel) * wear;
  }
  return changes;
}

function limitsOf(
  feasible: Feasible,
  input: ReportInput,
  effort: Effort,
  outcomes: RunOutcomes,
  shape: FloorShape,
): Limit[] {
  const { job, limits } = input;
  const { task, solved, candidate } = feasible;
  const candidates = energiesOf(solved).map((energy) =>
    candidateOf(task, solved, energy, candidate.passWidth),
  );
  const ofProcess = limits.flatMap((check) =>
    candidates
      .map((each) => withSensitivity(check, each, job))
      .reduce((worst, next) => worst.map((limit, index) => tighter(limit, next[index]!))),
  );
  const ligament = job.plate.thickness - percentiles(outcomes.deepest, [job.groove.ligament_assurance])[0]!;
  const width = percentiles(outcomes.width, [0.5])[0]!;
  const wanted = { text: 'the job: wanted groove', provenance: 'job file' as const };
  const common = { source: wanted, hard: true };
  return [
    ...ofProcess,
    limitOf({
      ...common,
      id: 'ligament',
      title: `Ligament kept in ${(job.groove.ligament_assurance * 100).toFixed(1).replace(/\.0$/, '')} of 100 shops`,
      demand: inUnit(ligament, 'mm'),
      capacity: inUnit(job.groove.ligament_least, 'mm'),
      unit: 'mm',
      sense: 'least',
      remedy: 'a shallower groove, or a smaller least ligament',
    }),
    limitOf({
      ...common,
      id: 'root_radius',
      title: 'Root radius',
      demand: inUnit(shape.rootRadius ?? 0, 'mm'),
      capacity: inUnit(job.groove.root_radius_least, 'mm'),
      unit: 'mm',
      sense: 'least',
      remedy: 'a larger electrode',
    }),
    limitOf({
      ...common,
      id: 'width_least',
      title: 'Median width at the surface, least',
      demand: inUnit(width, 'mm'),
      capacity: inUnit(job.groove.width.least, 'mm'),
      unit: 'mm',
      sense: 'least',
      remedy: 'a larger electrode, or more tracks',
    }),
    limitOf({
      ...common,
      id: 'width_most',
      title: 'Median width at the surface, greatest',
      demand: inUnit(width, 'mm'),
      capacity: inUnit(job.groove.width.most, 'mm'),
      unit: 'mm',
      sense: 'most',
      remedy: 'a smaller electrode, or fewer tracks',
    }),
    limitOf({
      id: 'electrode_stock',
      title: 'Electrodes in stock, for 90 of 100 shops',
      demand: Math.ceil(spread(effort.electrodes).p90),
      capacity: solved.setup.electrode.count,
      unit: 'electrodes',
      sense: 'most',
      hard: true,
      source: { text: "the kit's stock", provenance: 'job file' },
      remedy: 'more electrodes of this size',
    }),
  ];
}

/** Of the same limit for two passes, the one with less room. */
function tighter(a: Limit, b: Limit): Limit {
  const room = (limit: Limit): number =>
    (limit.sense === 'most' ? limit.capacity - limit.demand : limit.demand - limit.capacity) /
    Math.max(Math.abs(limit.capacity), 1e-12);
  return room(b) < room(a) ? b : a;
}
