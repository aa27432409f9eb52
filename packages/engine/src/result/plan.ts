import { z } from 'zod';
import { limitSchema, type Stated } from '../limit/index.ts';
import type {
  Expectation,
  PassOutcome,
  Percentiles,
  PlanOutcome,
  RowOutcome,
  StopOutcome,
  TryoutOutcome,
} from '../plan/index.ts';
import { inUnit } from '../quantity/index.ts';
import { bandSchema } from './prediction.ts';

const expectationSchema = z
  .object({
    mean: z.number().describe('Mean over the shops: what is planned by [unit of the key].'),
    p50: z.number().describe('Median [unit of the key].'),
    p90: z.number().describe('90th percentile [unit of the key].'),
  })
  .meta({ id: 'Expectation', description: 'Mean, median and 90th percentile, in the unit of the key.' });

const passSchema = z
  .object({
    number: z.int().describe('Order in which it is run, from 1.'),
    layer: z.int().describe('Layer, from 1.'),
    track: z.int().describe('Track across the groove, from 1.'),
    offset_mm: z.number().describe("Offset of the track from the groove's centre line."),
    from_mm: z.number().describe('Where on the seam it begins; a run-out lies before it.'),
    to_mm: z.number().describe('Where on the seam it ends; a run-out lies after it.'),
    current_A: z.number().describe('Current that is set.'),
    arc_voltage_V: z.number().describe('Arc voltage that is set.'),
    push_angle_deg: z.number().describe('Angle between electrode and surface.'),
    travel_mm_per_min: z
      .number()
      .describe('Travel; where `set_by_gauge` is true, the travel for the middle reading.'),
    set_by_gauge: z.boolean().describe('Whether its travel is set by a reading at a stop.'),
    depth_mm: bandSchema.describe('What this pass alone takes off.'),
    dwell_s: z.number().describe('Wait between arc and travel at the start.'),
  })
  .meta({ id: 'PlanPass', description: 'One run of the torch along the seam.' });

const rowSchema = z
  .object({
    from_mm: z.number().describe('The row holds for readings from this depth on.'),
    to_mm: z.number().nullable().describe('Up to but not including this depth; null: no upper end.'),
    action: z
      .enum(['run', 'done', 'ask'])
      .describe('Run what is next, run no more passes, or stop and ask the welding engineer.'),
    reason: z
      .enum(['unexpected', 'out_of_reach', 'nothing_holds', 'too_deep'])
      .nullable()
      .describe(
        'Why to ask; null otherwise. Unexpected: outside what was expected. Out of reach: more is missing than the pass can take off. Nothing holds: left, it is likely short somewhere, and the thinnest pass goes too deep somewhere. Too deep: it most likely is, somewhere between the stations.',
      ),
    travel_mm_per_min: z.number().nullable().describe('Travel of what is run next; null unless it is run.'),
    deepen_travel_mm_per_min: z
      .number()
      .nullable()
      .describe('After a run-in: travel that deepens its stretch at the end; null otherwise.'),
    travel_factor: z
      .number()
      .nullable()
      .describe(
        'After a stop: that travel over the travel of the pass before on the same track; null otherwise [-].',
      ),
    in_band: z
      .boolean()
      .describe(
        'Whether every reading of the row lies inside what the drawing asks for. Where it does and a pass is run all the same, places beside the stations are likelier short than not.',
      ),
    expect_mm: bandSchema.describe(
      'Mean depth of the groove to expect in the end; where nothing more is run, the depth that is there.',
    ),
    too_shallow: z.number().describe('Chance with this reading that the groove ends too shallow somewhere.'),
    too_deep: z.number().describe('Chance with this reading that the groove ends too deep somewhere.'),
    reading_from_mm: z.number().describe('The same as `from_mm`.'),
    reading_to_mm: z.number().nullable().describe('The same as `to_mm`.'),
    expected_depth_mm: bandSchema.describe('The same as `expect_mm`.'),
    depth_reached: z.number().describe('1 less `too_shallow` [-].'),
    not_too_deep: z.number().describe('1 less `too_deep` [-].'),
  })
  .meta({ id: 'GaugeRow', description: 'A reading and what to do about it.' });

const tryoutSchema = z
  .object({
    length_mm: z.number().describe('Length along the seam.'),
    on: z.enum(['scrap', 'run_on', 'seam']).describe('What it is cut on.'),
    current_A: z.number().describe('Current that is set.'),
    travel_mm_per_min: z.number().describe('Travel that is set.'),
    depth_mm: bandSchema.describe('Depth of its cut.'),
    stations: z
      .array(z.number())
      .describe('Where it is gauged, from its start [mm]; the mean is the reading.'),
    reading_sd_mm: z.number().describe('Standard deviation of one gauge reading.'),
    table: z.array(rowSchema),
  })
  .meta({ id: 'Tryout', description: 'A cut that is gauged to set the travel of the seam by.' });

/** A stop to measure the groove. */
export const stopSchema = z
  .object({
    after_layer: z.int().describe('The stop comes after this layer.'),
    stations: z.int().describe('Stations per track, whose mean is the reading.'),
    station_positions_mm: z.array(z.number()).describe('Where they lie, from the start of the seam.'),
    reading_sd_mm: z.number().describe('Standard deviation of one gauge reading.'),
    table: z.array(rowSchema),
    stations_choice: z
      .array(
        z.object({
          stations: z.int().describe('Places that are gauged.'),
          depth_reached: z.number().describe('Chance with that many [-].'),
          not_too_deep: z.number().describe('Chance with that many [-].'),
        }),
      )
      .describe('Empty: `worth_measuring` says what another station is worth.'),
  })
  .meta({ id: 'GaugeStop', description: 'A stop to measure the groove before the next layer.' });

const sectionSchema = z
  .object({
    offset_mm: z.array(z.number()).describe('Distance from the centre line, to either side.'),
    depth_p05_mm: z.array(z.number()).describe('5th percentile of the depth at each offset.'),
    depth_p50_mm: z.array(z.number()).describe('Median depth at each offset.'),
    depth_p95_mm: z.array(z.number()).describe('95th percentile of the depth at each offset.'),
  })
  .meta({ id: 'SectionBand', description: 'The predicted floor across the seam; lists of equal length.' });

/** A whole set-up as it leaves: what to run, what to expect, how sure it is. */
export const planSchema = z
  .object({
    kind: z
      .enum(['blind', 'gauge_and_adjust'])
      .describe(
        '`blind`: run as set; `gauge_and_adjust`: something is measured first, and sets what follows.',
      ),
    ways: z
      .array(z.enum(['blind', 'trial', 'run_in', 'layers']))
      .describe('How the plan learns of the shop while it is run; layers: with gauging between them.'),
    dominated: z.boolean().describe('Another plan found is at least as good in time, cost and heat.'),
    electrode_diameter_mm: z.number().describe('Diameter of the electrode.'),
    electrode_kind: z.enum(['plain', 'jointed']),
    tracks: z.int().describe('Tracks side by side.'),
    track_spacing_mm: z.number().describe('Distance between neighbouring tracks; 0 for one track.'),
    layers: z.int().describe('Layers on top of each other.'),
    pass_length_mm: z.number().describe('Length each pass runs, run-outs included.'),
    passes: z.array(passSchema),
    trial: tryoutSchema.exactOptional().describe('A trial beside the seam, cut first.'),
    run_in: tryoutSchema.exactOptional().describe('The first stretch of the seam, cut shallow first.'),
    floor_depth_mm: bandSchema.describe('Deepest point of the finished floor anywhere along the seam.'),
    least_depth_mm: bandSchema.describe('Shallowest point along the seam where the depth must be reached.'),
    width_mm: bandSchema.describe("Width at the plate's surface."),
    root_radius_mm: z.number().describe('Radius fitted to the lowest arc, median section.'),
    wall_angle_deg: z.number().describe('Side wall against the vertical, median section.'),
    cusp_height_mm: z
      .number()
      .describe('Height of the ridge between tracks, median section; 0 for one track.'),
    ligament_mm: z
      .object({ p05: z.number().describe('5th percentile [mm].'), p50: z.number().describe('Median [mm].') })
      .describe('Plate left under the deepest point.'),
    assurance: z.object({
      depth_reached: z
        .number()
        .describe('Chance that the floor reaches the required depth everywhere it must.'),
      not_too_deep: z.number().describe('Chance that no point is deeper than the tolerance allows.'),
      width_in_band: z.number().describe('Chance that the width at the surface lies in its band everywhere.'),
      ligament_kept: z.number().describe('Chance that the least ligament is kept.'),
      joint: z.number().describe('Chance of all of them at once.'),
      standard_error: z.number().describe('Standard error of the one known least well [-].'),
    }),
    arc_time_s: expectationSchema.describe('Arc burning, a trial included.'),
    job_time_s: expectationSchema.describe(
      'Arc time with trial, starts, returns, electrode changes and gauging.',
    ),
    cost: expectationSchema.describe(
      'Electrodes, labour and overhead over the job time, and power for the arc, in `currency`.',
    ),
    whole_cost: expectationSchema.describe(
      'The same with set-up, cleaning, grinding, inspection and refill at their usual durations, in `currency`.',
    ),
    currency: z.string().describe('Currency of the cost as the job names it.'),
    electrodes_used: expectationSchema,
    arc_energy_kJ: z.number().describe('Arc energy of the seam, all of it, not the share the plate keeps.'),
    removed_mm3_per_mm: z.number().describe('Area of the median section: volume per length.'),
    loss_length_mm: z.number().describe('Length left ungouged if the arc goes out once.'),
    gauge_stops: z.array(stopSchema),
    electrode_changes: z
      .array(
        z.object({
          pass: z.int().describe('Number of the pass.'),
          at_mm: z.number().describe('Place along the seam.'),
        }),
      )
      .describe('Where electrodes run out at the median wear; below 0 in the run-out before a pocket.'),
    limits: z.array(limitSchema),
    section: sectionSchema,
    doubt: z
      .object({
        family: z.number().describe('What is not known of this shop [-].'),
        job: z.number().describe('What is common to this job: batch, plate, day, height setting [-].'),
        pass: z.number().describe('What differs from pass to pass [-].'),
        seam: z.number().describe('What varies along the seam [-].'),
        gauge: z.number().describe('Reading error [-].'),
      })
      .describe(
        'Where the doubt about the finished depth comes from: shares of the variance of its logarithm.',
      ),
    worth_measuring: z
      .array(
        z.object({
          what: z
            .enum(['trial', 'trial_known', 'station', 'finer_gauge', 'longer_trial'])
            .describe(
              'A trial where none can be cut; a trial of an earlier job on record; one more station than allowed; a gauge twice as fine; a trial twice as long.',
            ),
          saves_cost: z.number().describe('On the mean, in `currency`.'),
          saves_time_s: z.number().describe('On the mean; below 0 where a cheaper plan takes longer.'),
        }),
      )
      .describe(
        'What measuring more, or better, is worth on this job; only for the plan, not for alternatives.',
      ),
  })
  .meta({ id: 'Plan' });

/** A whole set-up as results state it. */
export type Plan = Stated<typeof planSchema>;
/** One run of the torch along the seam. */
export type PlanPass = Plan['passes'][number];
/** A stop to measure the groove, with its table. */
export type GaugeStop = Plan['gauge_stops'][number];
/** A reading, what to do about it and what to expect. */
export type GaugeRow = GaugeStop['table'][number];
/** A trial beside the seam, or a run-in on its first stretch. */
export type Tryout = NonNullable<Plan['trial']>;
/** The predicted floor across the seam. */
export type SectionBand = Plan['section'];
/** Where an electrode runs out. */
export type ElectrodeChange = Plan['electrode_changes'][number];
/** Percentiles of a predicted quantity. */
export type Band = Plan['width_mm'];
/** Mean, median and 90th percentile. */
export type Spread = Plan['job_time_s'];

/**
 * States a plan as it leaves: every number in the unit of its key.
 *
 * @param outcome - the plan in SI [record], from `planJob`
 * @returns the plan with units in its keys [record]
 * @source none: unit conversion
 * @example
 * statePlan({ ...demoAnswer.basis.plan, passLength: 6 }).pass_length_mm // => 6000
 */
export function statePlan(outcome: PlanOutcome): Plan {
  const { tryout, chances } = outcome;
  return {
    kind: tryout === undefined && outcome.stops.length === 0 ? 'blind' : 'gauge_and_adjust',
    ways: outcome.ways,
    dominated: outcome.dominated,
    electrode_diameter_mm: inUnit(outcome.electrode.diameter, 'mm'),
    electrode_kind: outcome.electrode.kind,
    tracks: outcome.pattern.tracks,
    track_spacing_mm: inUnit(outcome.pattern.spacing, 'mm'),
    layers: outcome.layers,
    pass_length_mm: inUnit(outcome.passLength, 'mm'),
    passes: outcome.passes.map(statePass),
    ...(tryout?.kind === 'trial' && { trial: stateTryout(tryout) }),
    ...(tryout?.kind === 'run_in' && { run_in: stateTryout(tryout) }),
    floor_depth_mm: inMillimetres(outcome.floorDepth),
    least_depth_mm: inMillimetres(outcome.leastDepth),
    width_mm: inMillimetres(outcome.width),
    root_radius_mm: inUnit(outcome.rootRadius, 'mm'),
    wall_angle_deg: inUnit(outcome.wallAngle, 'deg'),
    cusp_height_mm: inUnit(outcome.cuspHeight, 'mm'),
    ligament_mm: { p05: inUnit(outcome.ligament.p05, 'mm'), p50: inUnit(outcome.ligament.p50, 'mm') },
    assurance: {
      depth_reached: chances.reached,
      not_too_deep: chances.notTooDeep,
      width_in_band: chances.widthInBand,
      ligament_kept: chances.ligamentKept,
      joint: chances.joint,
      standard_error: chances.standardError,
    },
    arc_time_s: asStated(outcome.arcTime),
    job_time_s: asStated(outcome.jobTime),
    cost: asStated(outcome.cost),
    whole_cost: asStated(outcome.wholeCost),
    currency: outcome.currency,
    electrodes_used: asStated(outcome.electrodesUsed),
    arc_energy_kJ: inUnit(outcome.arcEnergy, 'kJ'),
    removed_mm3_per_mm: inUnit(outcome.removed, 'mm3_per_mm'),
    loss_length_mm: inUnit(outcome.lossLength, 'mm'),
    gauge_stops: outcome.stops.map(stateStop),
    electrode_changes: outcome.changes.map(({ pass, at }) => ({ pass, at_mm: inUnit(at, 'mm') })),
    limits: outcome.limits,
    section: {
      offset_mm: outcome.section.offset.map((each) => inUnit(each, 'mm')),
      depth_p05_mm: outcome.section.p05.map((each) => inUnit(each, 'mm')),
      depth_p50_mm: outcome.section.p50.map((each) => inUnit(each, 'mm')),
      depth_p95_mm: outcome.section.p95.map((each) => inUnit(each, 'mm')),
    },
    doubt: outcome.doubt,
    worth_measuring: outcome.worthMeasuring.map(({ what, cost, time }) => ({
      what,
      saves_cost: cost,
      saves_time_s: time,
    })),
  };
}

function statePass(pass: PassOutcome): PlanPass {
  return {
    number: pass.number,
    layer: pass.layer,
    track: pass.track,
    offset_mm: inUnit(pass.offset, 'mm'),
    from_mm: inUnit(pass.from, 'mm'),
    to_mm: inUnit(pass.to, 'mm'),
    current_A: pass.current,
    arc_voltage_V: pass.voltage,
    push_angle_deg: inUnit(pass.pushAngle, 'deg'),
    travel_mm_per_min: inUnit(pass.travel, 'mm_per_min'),
    set_by_gauge: pass.setByGauge,
    depth_mm: inMillimetres(pass.depth),
    dwell_s: pass.dwell,
  };
}

function stateTryout(tryout: TryoutOutcome): Tryout {
  return {
    length_mm: inUnit(tryout.length, 'mm'),
    on: tryout.on,
    current_A: tryout.current,
    travel_mm_per_min: inUnit(tryout.travel, 'mm_per_min'),
    depth_mm: inMillimetres(tryout.depth),
    stations: tryout.stations.map((place) => inUnit(place, 'mm')),
    reading_sd_mm: inUnit(tryout.readingSd, 'mm'),
    table: tryout.table.map(stateRow),
  };
}

/** States a stop with units in its keys. */
export function stateStop(stop: StopOutcome): GaugeStop {
  return {
    after_layer: stop.afterLayer,
    stations: stop.stations.length,
    station_positions_mm: stop.stations.map((place) => inUnit(place, 'mm')),
    reading_sd_mm: inUnit(stop.readingSd, 'mm'),
    table: stop.table.map(stateRow),
    stations_choice: [],
  };
}

function stateRow(row: RowOutcome): GaugeRow {
  const from = inUnit(row.from, 'mm');
  const to = row.to === undefined ? null : inUnit(row.to, 'mm');
  const expected = inMillimetres(row.expect);
  const travel = (value: number | undefined): number | null =>
    value === undefined ? null : inUnit(value, 'mm_per_min');
  return {
    from_mm: from,
    to_mm: to,
    action: row.action,
    reason: row.reason ?? null,
    in_band: row.inBand,
    travel_mm_per_min: travel(row.travel),
    deepen_travel_mm_per_min: travel(row.deepenTravel),
    travel_factor: row.travelFactor ?? null,
    expect_mm: expected,
    too_shallow: row.tooShallow,
    too_deep: row.tooDeep,
    reading_from_mm: from,
    reading_to_mm: to,
    expected_depth_mm: expected,
    depth_reached: 1 - row.tooShallow,
    not_too_deep: 1 - row.tooDeep,
  };
}

function inMillimetres({ p05, p50, p95 }: Percentiles): Band {
  return { p05: inUnit(p05, 'mm'), p50: inUnit(p50, 'mm'), p95: inUnit(p95, 'mm') };
}

function asStated({ mean, p50, p90 }: Expectation): Spread {
  return { mean, p50, p90 };
}
