import { z } from 'zod';
import type { Stated } from '../limit/index.ts';
import { inUnit, type StatedUnit } from '../quantity/index.ts';
import type {
  CurvePlace,
  CutAgain,
  Measured,
  RecutSetting,
  SeamOutcome,
  SeamPast,
  SeamTeaching,
  Section,
  Stretch,
  StretchRecut,
  SurveyFile,
} from '../survey/index.ts';
import { budgetSchema, gaugeCheckSchema } from './gauge.ts';
import { bandSchema } from './prediction.ts';
import { readingSchema, stateReading } from './reading.ts';

const measuredSchema = z
  .union([
    z.object({
      value: z.number().describe('Best estimate [unit of the key].'),
      u95: z.number().describe('Half of its 95 % interval, expanded uncertainty [unit of the key].'),
    }),
    z.object({ declined: z.string().describe('Why it cannot be told.') }),
  ])
  .meta({
    id: 'Measured',
    description: 'A measured quantity with its expanded uncertainty, or why there is none.',
  });

const sectionSchema = z
  .object({
    file: z.string().describe('File that it was read from.'),
    station_mm: z.number().nullable().describe('Place along the seam; null where it is not known.'),
    depth_mm: measuredSchema.describe('Largest distance below the plate line, square to it.'),
    width_mm: measuredSchema.describe('Along the plate line, between the points where the groove leaves it.'),
    root_radius_mm: measuredSchema.describe('Radius of the arc at the root.'),
    wall_left_deg: measuredSchema.describe('Left wall against the square to the plate line.'),
    wall_right_deg: measuredSchema.describe('Right wall against the square to the plate line.'),
    area_mm2: measuredSchema.describe('Area between plate line and groove.'),
    plate_step_mm: measuredSchema.describe('Right plate above the left one.'),
    tilt_deg: measuredSchema.describe('Slope of the plates in the scan.'),
    points: z.object({
      read: z.int().describe('Points of the section [-].'),
      missing: z.int().describe('Points without a value [-].'),
      outliers: z.array(z.int()).describe('Rows of wild points, from 1 [-].'),
    }),
    remarks: z.array(z.string()).describe('What else is to be known, in words.'),
    outline: z
      .object({
        offset_mm: z.array(z.number()).describe('Along the plate line, from the middle of the groove.'),
        depth_mm: z.array(z.number()).describe('Below the plate line.'),
        outliers: z
          .object({
            offset_mm: z.array(z.number()).describe('Along the plate line, from the middle of the groove.'),
            depth_mm: z.array(z.number()).describe('Below the plate line.'),
          })
          .describe('The wild points in the same frame; they do not count.'),
      })
      .nullable()
      .describe('The points that count, thinned; null without a plate line.'),
  })
  .meta({ id: 'SurveySection', description: 'What one scanned section says of the groove.' });

const fileSchema = z
  .object({
    file: z.string().describe('Name of the file.'),
    kind: z.enum(['sections', 'stations', 'cloud']),
    rows_read: z.int().describe('Rows or points read [-].'),
    choices: z.array(
      z.object({
        about: z.string().describe('What the choice is about.'),
        says: z.string().describe('In words.'),
        sure: z.boolean().describe('False where a person should look at it.'),
      }),
    ),
    floor: z
      .object({
        along_mm: z.number().describe('Length of a cell along the seam.'),
        across_mm: z.number().describe('Width of a cell across it.'),
        columns: z.int().describe('Cells along [-].'),
        rows: z.int().describe('Cells across [-].'),
        first_mm: z.number().describe('Middle of the first row across, from the middle of the groove.'),
        depth_mm: z
          .array(z.number().nullable())
          .describe('Mean depth of each cell, row by row; null where no point lies.'),
      })
      .nullable()
      .describe('The floor of a cloud, unrolled; null for a file that is none.'),
    table: readingSchema
      .nullable()
      .describe('How its table was read, as for logs; null for a file that is none.'),
  })
  .meta({ id: 'SurveyFile', description: 'How one file was read.' });

const stationSchema = z
  .object({
    at_mm: z.number().describe('Place along the seam.'),
    depth_mm: z.object({
      value: z.number().describe('As it was read [unit of the key].'),
      u95: z.number().describe('Half of its 95 % interval [unit of the key].'),
    }),
    width_mm: z
      .object({
        value: z.number().describe('As it was read [unit of the key].'),
        u95: z.number().describe('Half of its 95 % interval [unit of the key].'),
      })
      .nullable()
      .describe('Width read at the same place; null where none was.'),
    from: z.enum(['gauge', 'scan']),
    file: z.string().describe('Name of the file.'),
    row: z.int().nullable().describe('Row of its file, from 1 [-]; null for a scan.'),
    used: z.boolean().describe('Whether it counts.'),
    why: z
      .enum([
        'outside_seam',
        'gauge_failed',
        'cut_again',
        'before_last_pass',
        'inch_for_mm',
        'mm_for_inch',
        'thousandfold',
        'thousandth',
        'slipped_decimal',
      ])
      .nullable()
      .describe('Why it is not used; null where it is.'),
    would_be_mm: z.number().nullable().describe('What it would be then; null where nothing is known.'),
  })
  .meta({ id: 'SurveyReading', description: 'One depth along the seam, gauged or scanned.' });

const stretchSchema = z
  .object({
    from_mm: z.number().describe('Where it begins, along the seam.'),
    to_mm: z.number().describe('Where it ends, along the seam.'),
    verdict: z.enum(['holds', 'in_doubt', 'fails']),
    simple_acceptance: z.enum(['holds', 'fails']).describe('By the best estimate alone.'),
    miss: z.enum(['none', 'shallow', 'deep']),
    chance_wrong_accept: z.number().describe('Chance that it is out somewhere, were it accepted [-].'),
    chance_wrong_reject: z.number().describe('Chance that it is inside everywhere, were it rejected [-].'),
  })
  .meta({ id: 'SeamStretch', description: 'A stretch of the seam with one verdict.' });

const recutPlanSchema = z
  .object({
    kind: z
      .enum(['pass', 'grind', 'none', 'weld'])
      .describe('A repair pass; ground by hand; nothing that helps; weld metal where it is too deep.'),
    start_mm: z.number().exactOptional().describe('Where the torch starts, run-in included.'),
    end_mm: z.number().exactOptional().describe('Where it ends, run-out included.'),
    run_in_mm: z.number().exactOptional().describe('Length of run-in and of run-out.'),
    passes: z
      .int()
      .exactOptional()
      .describe('Repair passes on top of each other, each over the whole length [-].'),
    take_off_mm: z.number().exactOptional().describe('Depth to take off, all of them together.'),
    travel_mm_per_min: z.number().exactOptional().describe('Travel that is set.'),
    current_A: z.number().exactOptional().describe('Current that is set.'),
    arc_voltage_V: z.number().exactOptional().describe('Arc voltage that is set.'),
    electrode_mm: z.number().exactOptional().describe('Diameter of the electrode.'),
    push_angle_deg: z.number().exactOptional().describe('Angle of the electrode to the surface.'),
    chance_reached: z
      .number()
      .exactOptional()
      .describe('Chance that it then reaches its depth everywhere [-].'),
    chance_plate_kept: z
      .number()
      .exactOptional()
      .describe('Chance that the plate left keeps its least everywhere [-].'),
    chance_not_too_deep: z.number().exactOptional().describe('Chance that it is then too deep nowhere [-].'),
    missing_mm: z.number().exactOptional().describe('Mean depth that is missing.'),
    over_mm: z.number().exactOptional().describe('Mean depth beyond the greatest.'),
    weld_metal_kg: z.number().exactOptional().describe('Weld metal up to the greatest depth.'),
    weld_metal_band_kg: bandSchema
      .exactOptional()
      .describe('The same as the courses that the floor may take have it.'),
    plate_left_mm: bandSchema
      .exactOptional()
      .describe('Plate left at the deepest place, a repair pass taken off.'),
    preheat_planned_degC: z
      .number()
      .exactOptional()
      .describe('Temperature of the plate at which the groove was to be gouged and welded.'),
    preheat_plate_left_degC: z
      .number()
      .exactOptional()
      .describe('What EN 1011-2 method B asks of the plate left alone; left out where it does not tell.'),
    preheat_held_fast_degC: z
      .number()
      .exactOptional()
      .describe(
        'What AWS D1.1 hydrogen control asks of the whole plate at high restraint; left out where it does not tell.',
      ),
    preheat_asked_degC: z
      .number()
      .exactOptional()
      .describe('The highest of what is asked of a weld back; left out where no method tells.'),
    preheat_added_K: z.number().exactOptional().describe('What that is above the temperature planned.'),
    says: z.array(z.string()).describe('What to do and to mind, in words.'),
  })
  .meta({ id: 'RecutPlan', description: 'How a stretch that fails is mended.' });

const verdictSchema = z.enum(['holds', 'in_doubt', 'fails']);

const seamSchema = z
  .object({
    verdict: z.enum(['holds', 'in_doubt', 'fails']).describe('The worst of its stretches.'),
    prediction: z.enum(['plan', 'run']).describe('What the curve is without readings.'),
    curve: z.array(
      z.object({
        at_mm: z.number().describe('Place along the seam.'),
        depth_mm: bandSchema,
        remaining_mm: bandSchema.describe('Plate left under the groove.'),
        width_mm: bandSchema.describe('Width at the surface.'),
      }),
    ),
    limits: z.object({
      least_mm: z.number().describe('Least that is accepted.'),
      most_mm: z.number().describe('Greatest that is accepted.'),
      plate_left_least_mm: z.number().describe('Least plate that is to be left.'),
    }),
    remaining: z
      .object({
        verdict: verdictSchema,
        least_mm: z.number().describe('Least that is accepted.'),
        stretches: z.array(stretchSchema),
      })
      .describe('Plate left under the groove, judged by itself.'),
    width: z
      .object({
        verdict: verdictSchema,
        limits: z.object({
          least_mm: z.number().describe('Least that is accepted.'),
          most_mm: z.number().describe('Greatest that is accepted.'),
        }),
        readings: z.int().describe('Widths measured that count; 0: the prediction alone [-].'),
        set_aside: z.int().describe('Widths that a wrong unit or a slipped decimal point explains [-].'),
        stretches: z.array(stretchSchema),
      })
      .describe('Width at the surface, judged by itself; it counts for the whole where it was measured.'),
    spread: z
      .object({
        common: z.number().describe('Common to the whole seam, in ln depth [-].'),
        course: z.number().describe('Of the course along the seam, in ln depth [-].'),
        common_before: z.number().describe('The same before the readings [-].'),
        course_before: z.number().describe('The same before the readings [-].'),
      })
      .describe('Standard deviations of the depth about its prediction, as the readings leave them.'),
    readings: z.array(stationSchema),
    stretches: z.array(stretchSchema),
    rule: z.string().describe('The decision rule, by name.'),
    risk: z
      .number()
      .describe('Loss to be expected of the better decision, place by place [unit of risk_unit].'),
    risk_unit: z.string().describe('The currency of the job; m of groove cut again where no rate is stated.'),
    measure_next: z.array(
      z.object({
        at_mm: z.number().describe('Place along the seam.'),
        gain: z.number().describe('Risk that a reading there is expected to remove [unit of risk_unit].'),
        gain_per_minute: z.number().describe('The same per minute of measuring [unit of risk_unit per min].'),
      }),
    ),
    enough: z.boolean().describe('Whether no further reading is worth its while.'),
    recut: z.array(
      z.object({
        from_mm: z.number().describe('Where it begins, along the seam.'),
        to_mm: z.number().describe('Where it ends, along the seam.'),
        plan: recutPlanSchema,
      }),
    ),
    cut_again: z
      .array(
        z.object({
          from_mm: z.number().describe('Where it begins, along the seam.'),
          to_mm: z.number().describe('Where it ends, along the seam.'),
        }),
      )
      .describe('Recuts that were done, in their order; each is measured anew.'),
    history: z
      .array(
        z.object({
          after_recut: z.int().describe('Recuts done until then [-].'),
          verdict: z.enum(['holds', 'in_doubt', 'fails']),
          readings_used: z.int().describe('Readings that it rests on [-].'),
          stretches: z.array(stretchSchema),
        }),
      )
      .describe('What was said before each recut, oldest first; empty where nothing was cut again.'),
    teaches: z
      .object({
        readings: z.int().describe('Readings that say how deep a pass cut, or layers together [-].'),
        left_out: z.array(
          z.object({
            why: z.enum(['several_tracks', 'travel_unknown', 'no_pass', 'nothing_cut']),
            readings: z.int().describe('Readings [-].'),
          }),
        ),
        entry: z
          .record(z.string(), z.unknown())
          .nullable()
          .describe("Entry for the shop's trials file, amounts as they are written there; null for none."),
      })
      .describe('What the readings teach the shop.'),
    remarks: z.array(z.string()).describe('What else is to be known, in words.'),
  })
  .meta({ id: 'SurveySeam', description: 'The seam as prediction and readings together have it.' });

/** What `furrow survey` prints with `--json`. */
export const surveySchema = z
  .object({
    inputs: z.object({
      program_version: z.string().describe('Version of the program.'),
      files: z.array(
        z.object({
          file: z.string().describe('Name of the file.'),
          sha256: z.string().describe('Hash of its bytes.'),
        }),
      ),
      run: z
        .object({
          file: z.string().describe('Name of the file.'),
          sha256: z.string().describe('Hash of its bytes.'),
        })
        .nullable()
        .describe('Log by which the depth is predicted, as the readings name it; null where they name none.'),
      job_revision: z.string().nullable().describe('Revision of the job; null without one.'),
      knowledge: z.string().nullable().describe('What the prediction rests on; null without a job.'),
      filter_mm: z
        .number()
        .nullable()
        .describe('Cutoff of the Gaussian filter (ISO 16610-21); null for none.'),
      gauge_u_mm: z
        .number()
        .nullable()
        .describe('Standard uncertainty of one gauge reading; null where no reading was gauged.'),
      gauge_u_from: z.string().describe('What that comes from, in words.'),
      gauge_budget: budgetSchema.describe('What it is made of; empty where no study tells it.'),
    }),
    reading: z.array(fileSchema),
    sections: z.array(sectionSchema),
    seam: seamSchema.nullable().describe('Null without a job, or where the job has no plan.'),
    gauge_check: gaugeCheckSchema
      .nullable()
      .describe('The last check of the gauge against a block; null where none is told.'),
    remarks: z.array(z.string()).describe('What else is to be known, in words.'),
  })
  .meta({ id: 'SurveyReport', description: 'What was measured of a groove, and what that says of it.' });

/** What was measured of a groove, as it leaves the engine. */
export type SurveyReport = Stated<typeof surveySchema>;
/** How a stretch that fails is mended, as it leaves the engine. */
export type RecutPlan = Stated<typeof recutPlanSchema>;
/** The seam as it leaves the engine. */
export type SurveySeam = Stated<typeof seamSchema>;

/** Points of an outline that are handed out at most [-]. */
const OUTLINE_MOST = 400;

function measuredIn(quantity: Measured, unit: StatedUnit): z.output<typeof measuredSchema> {
  return 'declined' in quantity
    ? { declined: quantity.declined }
    : { value: inUnit(quantity.value, unit), u95: inUnit(quantity.u95, unit) };
}

/**
 * States a measured section with units in its keys.
 *
 * @param section - the section [record], from `measureSection`
 * @param file - the file it was read from [text], any
 * @returns the section as it leaves the engine [record]
 * @source none: bookkeeping
 * @example
 * stateSection(measureSection({ across: new Float64Array(0), height: new Float64Array(0) }), 'a.csv').depth_mm // => {"declined":"too few points"}
 */
export function stateSection(section: Section, file: string): SurveyReport['sections'][number] {
  const { outline, points } = section;
  const thin = outline === undefined ? 1 : Math.max(1, Math.ceil(outline.offset.length / OUTLINE_MOST));
  const thinned = (values: Float64Array): number[] =>
    Array.from({ length: Math.ceil(values.length / thin) }, (_, i) =>
      rounded(inUnit(values[i * thin]!, 'mm')),
    );
  return {
    file,
    station_mm: section.station === undefined ? null : inUnit(section.station, 'mm'),
    depth_mm: measuredIn(section.depth, 'mm'),
    width_mm: measuredIn(section.width, 'mm'),
    root_radius_mm: measuredIn(section.rootRadius, 'mm'),
    wall_left_deg: measuredIn(section.wallLeft, 'deg'),
    wall_right_deg: measuredIn(section.wallRight, 'deg'),
    area_mm2: measuredIn(section.area, 'mm2'),
    plate_step_mm: measuredIn(section.plateStep, 'mm'),
    tilt_deg: measuredIn(section.tilt, 'deg'),
    points: { read: points.read, missing: points.missing, outliers: [...points.outliers] },
    remarks: [...section.remarks],
    outline:
      outline === undefined
        ? null
        : {
            offset_mm: thinned(outline.offset),
            depth_mm: thinned(outline.depth),
            outliers: {
              offset_mm: outline.wild.map(({ offset }) => rounded(inUnit(offset, 'mm'))),
              depth_mm: outline.wild.map(({ depth }) => rounded(inUnit(depth, 'mm'))),
            },
          },
  };
}

/** To a tenth of a micrometre: what is only drawn needs no more. */
function rounded(millimetres: number): number {
  return Math.round(millimetres * 1e4) / 1e4;
}

/**
 * States how a file was read.
 *
 * @param file - the file [record], from `readSurveyFile`
 * @returns its reading as it leaves the engine [record]
 * @source none: bookkeeping
 * @example
 * stateSurveyFile({ name: 'a.csv', kind: 'stations', sections: [], stations: [], rows: 2, choices: [] }).rows_read // => 2
 */
export function stateSurveyFile({
  name,
  kind,
  rows,
  choices,
  floor,
  table,
}: SurveyFile): SurveyReport['reading'][number] {
  return {
    file: name,
    kind,
    rows_read: rows,
    choices: choices.map(({ about, says, sure }) => ({ about, says, sure })),
    floor:
      floor === undefined
        ? null
        : {
            along_mm: inUnit(floor.along, 'mm'),
            across_mm: inUnit(floor.across, 'mm'),
            columns: floor.columns,
            rows: floor.rows,
            first_mm: inUnit(floor.first, 'mm'),
            depth_mm: Array.from(floor.depth, (depth) =>
              Number.isNaN(depth) ? null : rounded(inUnit(depth, 'mm')),
            ),
          },
    table: table === undefined ? null : stateReading(table),
  };
}

/**
 * States a seam with units in its keys.
 *
 * @param seam - the seam as prediction and readings have it [record], any
 * @param teaches - what the readings teach the shop [record], any
 * @param recuts - stretches that were cut again [list], in their order
 * @param past - what was said before each of them [list], oldest first
 * @returns the seam as it leaves the engine [record]
 * @source none: bookkeeping
 * @example
 * const curve = [{ at: 0.5, depth: { p05: 0.009, p50: 0.01, p95: 0.011 } }];
 * const none = { readings: [], stretches: [], recuts: [], apart: [], next: { risk: 0, stations: [] } };
 * const width = { curve: [{ p05: 0.015, p50: 0.016, p95: 0.017 }], band: { least: 0.014, most: 0.02 }, stretches: [] };
 * const spread = { before: { common: 0.2, course: 0.05 }, after: { common: 0.1, course: 0.04 } };
 * const seam = { ...none, width, spread, remaining: { stretches: [] }, thickness: 0.03, curve, band: { least: 0.009, most: 0.012 }, ligamentLeast: 0.004 };
 * stateSeam(seam, { readings: 0, leftOut: [], entry: null }).curve[0].remaining_mm // => { p05: 19, p50: 20, p95: 21 }
 */
export function stateSeam(
  seam: SeamOutcome,
  teaches: SeamTeaching,
  recuts: readonly CutAgain[] = [],
  past: readonly SeamPast[] = [],
): SurveySeam {
  const left = (taken: number): number => inUnit(seam.thickness - taken, 'mm');
  const mm = (metres: number): number => inUnit(metres, 'mm');
  const { width, spread } = seam;
  return {
    verdict: seam.verdict,
    prediction: seam.prediction,
    curve: seam.curve.map(({ at, depth: { p05, p50, p95 } }, i) => ({
      at_mm: mm(at),
      depth_mm: { p05: mm(p05), p50: mm(p50), p95: mm(p95) },
      remaining_mm: { p05: left(p95), p50: left(p50), p95: left(p05) },
      width_mm: bandIn(seam.width.curve[i]!),
    })),
    limits: {
      least_mm: mm(seam.band.least),
      most_mm: mm(seam.band.most),
      plate_left_least_mm: mm(seam.ligamentLeast),
    },
    remaining: {
      verdict: seam.remaining.verdict,
      least_mm: mm(seam.ligamentLeast),
      stretches: seam.remaining.stretches.map(stateStretch),
    },
    width: {
      verdict: width.verdict,
      limits: { least_mm: mm(width.band.least), most_mm: mm(width.band.most) },
      readings: width.readings,
      set_aside: width.setAside,
      stretches: width.stretches.map(stateStretch),
    },
    spread: {
      common: spread.after.common,
      course: spread.after.course,
      common_before: spread.before.common,
      course_before: spread.before.course,
    },
    readings: seam.readings.map(({ reading, why, wouldBe }) => ({
      at_mm: mm(reading.at),
      depth_mm: { value: mm(reading.depth), u95: mm(TWO_SIDED * reading.u) },
      width_mm:
        reading.width === undefined
          ? null
          : { value: mm(reading.width.value), u95: mm(TWO_SIDED * reading.width.u) },
      from: reading.from,
      file: reading.file,
      row: reading.row,
      used: why === null,
      why,
      would_be_mm: wouldBe === null ? null : mm(wouldBe),
    })),
    stretches: seam.stretches.map(stateStretch),
    rule: seam.rule,
    risk: seam.next.risk,
    risk_unit: seam.riskUnit,
    measure_next: seam.next.stations.map(({ at, gain, gainPerMinute }) => ({
      at_mm: mm(at),
      gain,
      gain_per_minute: gainPerMinute,
    })),
    enough: seam.next.stations.length === 0,
    recut: seam.recuts.map((each) => ({
      from_mm: mm(each.from),
      to_mm: mm(each.to),
      plan: stateRecut(each, seam.setting),
    })),
    cut_again: recuts.map(({ from, to }) => ({ from_mm: mm(from), to_mm: mm(to) })),
    history: past.map(({ afterRecut, seam: { verdict, stretches, readings } }) => ({
      after_recut: afterRecut,
      verdict,
      readings_used: readings.filter(({ why }) => why === null).length,
      stretches: stretches.map(stateStretch),
    })),
    teaches: {
      readings: teaches.readings,
      left_out: teaches.leftOut.map(({ why, readings }) => ({ why, readings })),
      entry: teaches.entry,
    },
    remarks: [
      ...(seam.readings.some(({ why }) => why === null)
        ? []
        : ['Nothing was measured on the seam yet: the curve is the prediction alone.']),
      ...(seam.apart.length > 0
        ? [
            'A reading stands apart from all around it: it is taken for a fault at its place, and the curve does not follow it. Gauge where it begins and ends before anything is cut there.',
          ]
        : []),
      ...(seam.isFar
        ? ['The readings are far from what was predicted for this job: look whether they are of this groove.']
        : []),
    ],
  };
}

function stateStretch(stretch: Stretch): SurveySeam['stretches'][number] {
  return {
    from_mm: inUnit(stretch.from, 'mm'),
    to_mm: inUnit(stretch.to, 'mm'),
    verdict: stretch.verdict,
    simple_acceptance: stretch.simple,
    miss: stretch.miss,
    chance_wrong_accept: stretch.wrongAccept,
    chance_wrong_reject: stretch.wrongReject,
  };
}

/** Half of a 95 % interval over the standard uncertainty [-]. */
const TWO_SIDED = 1.96;
/** Chance below which a repair pass is told to be uncertain [-]. */
const SURE = 0.95;

const MEASURE_AGAIN = 'Measure again at both ends and in the middle before the seam is accepted.';

function bandIn({ p05, p50, p95 }: CurvePlace['depth']): z.output<typeof bandSchema> {
  return { p05: inUnit(p05, 'mm'), p50: inUnit(p50, 'mm'), p95: inUnit(p95, 'mm') };
}

function stateRecut({ recut, plateLeft, preheat }: StretchRecut, setting: RecutSetting): RecutPlan {
  const { planned, plateLeft: ofPlateLeft, heldFast, asked } = preheat;
  const under = {
    plate_left_mm: bandIn(plateLeft),
    preheat_planned_degC: inUnit(planned, 'degC'),
    ...(ofPlateLeft === undefined ? {} : { preheat_plate_left_degC: inUnit(ofPlateLeft, 'degC') }),
  };
  if (recut.kind === 'weld') {
    return {
      kind: 'weld',
      over_mm: inUnit(recut.over, 'mm'),
      weld_metal_kg: recut.weldMetal,
      weld_metal_band_kg: recut.weldMetalBand,
      ...under,
      ...(heldFast === undefined ? {} : { preheat_held_fast_degC: inUnit(heldFast, 'degC') }),
      ...(asked === undefined
        ? {}
        : { preheat_asked_degC: inUnit(asked, 'degC'), preheat_added_K: asked - planned }),
      says: [
        'Too deep: stop and ask the welding engineer before anything is welded or ground.',
        'Where the plate left is below its least, look at the back face and put no heat on it before the engineer has said how.',
      ],
    };
  }
  if (recut.kind !== 'pass') {
    const why = `${recut.reason[0]!.toUpperCase()}${recut.reason.slice(1)}.`;
    return { kind: recut.kind, missing_mm: inUnit(recut.missing, 'mm'), says: [why, MEASURE_AGAIN] };
  }
  return {
    kind: 'pass',
    start_mm: inUnit(recut.from, 'mm'),
    end_mm: inUnit(recut.to, 'mm'),
    run_in_mm: inUnit(recut.ramp, 'mm'),
    passes: recut.passes,
    take_off_mm: inUnit(recut.depth, 'mm'),
    travel_mm_per_min: inUnit(recut.travel, 'mm/min'),
    current_A: setting.current,
    arc_voltage_V: setting.voltage,
    electrode_mm: inUnit(setting.diameter, 'mm'),
    push_angle_deg: inUnit(setting.pushAngle, 'deg'),
    chance_reached: recut.reached,
    chance_plate_kept: recut.plateKept,
    chance_not_too_deep: recut.notTooDeep,
    ...under,
    says: [
      'Clean the stretch, strike the arc at the start of the run-in while the carriage moves, and let it run out over the run-out.',
      ...(Math.min(recut.reached, recut.notTooDeep) < SURE
        ? [
            'The chance is below 95 %: measure the stretch more closely first, or take less and measure between.',
          ]
        : []),
      MEASURE_AGAIN,
    ],
  };
}
