import { readFileSync } from 'node:fs';
import {
  type Answer,
  type Plan,
  type PlanPass,
  type ReadJob,
  readJob,
  type StatedUnit,
} from '@furrow/engine';

/** The demo jobs, by the name of their file. */
export type ExampleName = 'penstock-seam' | 'casting-wash' | 'defect-pocket';

/** Reads a demo job, its text changed first where a test asks for it. */
export function exampleJob(name: ExampleName, changed: (text: string) => string = (text) => text): ReadJob {
  const file = new URL(`../../../examples/${name}.yaml`, import.meta.url);
  const outcome = readJob(changed(readFileSync(file, 'utf8')));
  if (!outcome.ok) throw new Error(outcome.issues.map((issue) => issue.message).join('\n'));
  return outcome.value;
}

/** How a hand-made plan is to look; its numbers are chosen by hand, not planned. */
export interface SampleShape {
  readonly tracks: number;
  readonly layers: number;
  readonly gauge: boolean;
  /** Whether every pass has a travel of its own. */
  readonly uneven?: boolean;
}

const band = (middle: number, spread: number): { p05: number; p50: number; p95: number } => ({
  p05: middle - spread,
  p50: middle,
  p95: middle + spread,
});

/** A plan written by hand for papers alone, so that their tests do not wait for the planner. */
export function samplePlan({ job }: ReadJob, shape: SampleShape): Plan {
  const { tracks, layers, gauge, uneven = false } = shape;
  const spacing = tracks > 1 ? 9 : 0;
  const length = job.seam.length * 1000 + (job.groove.shape === 'pocket' ? 48 : 0);
  const perLayer = 14 / layers;
  const passes: PlanPass[] = [];
  for (let layer = 1; layer <= layers; layer += 1) {
    for (let track = 1; track <= tracks; track += 1) {
      passes.push({
        number: passes.length + 1,
        layer,
        track,
        offset_mm: (track - (tracks + 1) / 2) * spacing,
        from_mm: 0,
        to_mm: job.seam.length * 1000,
        current_A: 850,
        arc_voltage_V: 42,
        push_angle_deg: 45,
        travel_mm_per_min: 700 + (uneven ? 12 * passes.length : 0),
        set_by_gauge: gauge && layer > 1,
        depth_mm: band(perLayer, 0.2 * perLayer),
        dwell_s: 1.84,
      });
    }
  }
  const half = ((tracks - 1) * spacing) / 2 + 10;
  const offsets = Array.from({ length: 121 }, (_unused, index) => -half + (half * index) / 60);
  const floor = (depth: number): number[] =>
    offsets.map((offset) => Math.max(0, depth - Math.max(0, Math.abs(offset) - half + 10) ** 2 / 5));
  const stops = gauge ? Array.from({ length: layers - 1 }, (_unused, index) => index + 1) : [];
  return {
    kind: gauge ? 'gauge_and_adjust' : 'blind',
    ways: gauge ? ['layers'] : ['blind'],
    dominated: false,
    electrode_diameter_mm: 12.7,
    electrode_kind: 'jointed',
    tracks,
    track_spacing_mm: spacing,
    layers,
    pass_length_mm: length,
    passes,
    floor_depth_mm: band(14, 2),
    least_depth_mm: band(13.6, 2),
    width_mm: band(17, 1.5),
    root_radius_mm: 7.9,
    wall_angle_deg: 8,
    cusp_height_mm: tracks > 1 ? 1.2 : 0,
    ligament_mm: { p05: 16, p50: 18 },
    assurance: {
      depth_reached: 0.962,
      not_too_deep: 0.953,
      ligament_kept: 0.998,
      width_in_band: 0.97,
      joint: 0.93,
      standard_error: 0.004,
    },
    arc_time_s: { mean: 985, p50: 980, p90: 1010 },
    job_time_s: { mean: 1620, p50: 1600, p90: 1790 },
    cost: { mean: 62, p50: 61.2, p90: 70.5 },
    whole_cost: { mean: 1070, p50: 1061.2, p90: 1180.5 },
    currency: job.rates.currency,
    electrodes_used: { mean: 11.2, p50: 11, p90: 12.4 },
    arc_energy_kJ: 35_000,
    removed_mm3_per_mm: 140,
    loss_length_mm: 4.9,
    gauge_stops: stops.map((layer) => ({
      after_layer: layer,
      stations: 5,
      station_positions_mm: [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => share * length),
      reading_sd_mm: 0.4,
      table: [
        row(0, 3.8, 'ask'),
        row(3.8, 5, 'run', 560),
        row(5, 6.2, 'run', 640),
        row(6.2, 7.4, 'run', 720),
        row(7.4, 9, 'done'),
        row(9, 11, 'ask'),
        row(11, null, 'ask'),
      ],
      stations_choice: [],
    })),
    electrode_changes: passes.flatMap((pass) =>
      [1350, 2700, 4050, 5400].filter((at) => at < length).map((at) => ({ pass: pass.number, at_mm: at })),
    ),
    limits: [
      limit('removal_power', 'Power to melt the groove out', 9.8, 12.5, 'kW', 'holds'),
      limit('pass_depth', 'Depth of one pass', 17, 19, 'mm', 'tight'),
    ],
    section: {
      offset_mm: offsets,
      depth_p05_mm: floor(12),
      depth_p50_mm: floor(14),
      depth_p95_mm: floor(16),
    },
    doubt: { family: 0.1, job: 0.05, pass: 0.25, seam: 0.4, gauge: 0.2 },
    worth_measuring: [{ what: 'trial_known', saves_cost: 4.2, saves_time_s: 190 }],
  };
}

type Row = Plan['gauge_stops'][number]['table'][number];

function row(from: number, to: number | null, action: Row['action'], travel: number | null = null): Row {
  return {
    from_mm: from,
    to_mm: to,
    action,
    reason: action === 'ask' ? 'unexpected' : null,
    in_band: false,
    travel_mm_per_min: travel,
    deepen_travel_mm_per_min: null,
    travel_factor: travel === null ? null : travel / 700,
    expect_mm: band(13.8, 1.4),
    too_shallow: 0.04,
    too_deep: 0.03,
    reading_from_mm: from,
    reading_to_mm: to,
    expected_depth_mm: band(13.8, 1.4),
    depth_reached: 0.96,
    not_too_deep: 0.97,
  };
}

function limit(
  id: string,
  title: string,
  demand: number,
  capacity: number,
  unit: StatedUnit,
  verdict: Plan['limits'][number]['verdict'],
): Plan['limits'][number] {
  return {
    id,
    title,
    demand,
    capacity,
    unit,
    sense: 'most',
    verdict,
    hard: true,
    source: { text: 'sum worked out by hand', provenance: 'derived' },
    remedy: 'slower travel',
    sensitivity: [],
  };
}

/** A result around a plan, or a refusal where there is none. */
export function sampleAnswer(
  read: ReadJob,
  plan: Plan | undefined,
  cautions: readonly string[] = [],
): Answer {
  return {
    inputs: {
      revision: read.revision,
      program_version: '0.1.0',
      seed: 1,
      posterior_id: 'sample',
      knowledge: { id: 'sample', trials: 0, jobs: 0, date: null },
      defaults_used: read.defaultsUsed,
    },
    ...(plan === undefined
      ? {
          refusal: {
            summary: 'No set-up of this kit makes this groove surely enough.',
            binding: [
              {
                constraint: 'depth_minus',
                demand: 1,
                limit: 0,
                unit: 'mm',
                remedy: 'a depth that may fall short',
                frees: true,
              },
            ],
          },
        }
      : { plan }),
    alternatives: plan === undefined ? [] : [plan],
    advice: [{ topic: 'Polarity', text: 'Electrode positive.', source: 'a leaflet', provenance: 'memory' }],
    cautions,
  };
}
