import { z } from 'zod';
import type { Stated } from '../limit/index.ts';
import type { OntoFloorChances, OntoFloorPlan, StopOutcome } from '../plan/index.ts';
import { inUnit, type Sentence, sentenceSchema } from '../quantity/index.ts';
import type { DepthAlong, EventCauses, Recut, RunEvent, RunOutcome, SeamStretch } from '../run/index.ts';
import { stateStop, stopSchema } from './plan.ts';
import { bandSchema } from './prediction.ts';
import { type ReadingReport, readingSchema } from './reading.ts';

/** Kinds of events, in the order of the help. */
const KINDS = [
  'touch_down',
  'arc_out',
  'short',
  'restart_short',
  'electrode_change',
  'voltage_drift',
  'current_drift',
  'stall',
  'slip',
  'low_air',
  'feed_stop',
  'gap',
  'clock_step',
  'stale_reading',
  'spike',
] as const;

/** A number that a file may not be able to give. */
const place = z.number().nullable();

const runInputsSchema = z
  .object({
    file_sha256: z.string().describe('SHA-256 of the file, in hex.'),
    job_revision: z.string().nullable().describe('Content hash of the job; null without one.'),
    logger_revision: z
      .string()
      .nullable()
      .describe('Content hash of the logger description; null without one.'),
    program_version: z.string().describe('Version of the program.'),
    knowledge_id: z
      .string()
      .nullable()
      .describe('Which knowledge of removal the depth rests on; null without a job.'),
    rehearsal: z.boolean().describe('Whether the readings come from a rehearsal, not from a rig.'),
  })
  .meta({ id: 'RunInputs', description: 'What the review was made from.' });

const totalsSchema = z
  .object({
    arc_time_s: place.describe('Time with the arc burning.'),
    arc_out_time_s: place.describe('Time of arc-outs in passes, without electrode changes.'),
    mean_arc_voltage_V: place.describe('Mean over the arc time.'),
    mean_current_A: place.describe('Mean over the arc time.'),
    arc_energy_kJ: place.describe('By the trapezoid rule; see energy_by.'),
    energy_by: z
      .enum(['instants', 'means'])
      .nullable()
      .describe(
        'instants: rows follow the ripple of the current; means: they do not, and the product of volts and amps may miss what swings together.',
      ),
    travelled_mm: place.describe('From first to last arc, all passes together.'),
    gouged_mm: place.describe('Part of it with the arc burning.'),
    electrode_used_mm: place.describe('As fed, else from the charge and the usual wear.'),
    electrode_planned_mm: place.describe('What the passes run were planned to burn.'),
  })
  .meta({ id: 'RunTotals', description: 'Sums of a run; null where the file cannot give them.' });

const passSchema = z
  .object({
    number: z.int().describe('In the order run, from 1.'),
    planned: z.int().nullable().describe('Pass of the plan that it is taken for.'),
    start_s: z.number().describe('Elapsed time of the log where it begins.'),
    end_s: z.number().describe('Elapsed time of the log where it ends.'),
    from_mm: place.describe('Where it begins, along the seam; null where no place is known.'),
    to_mm: place.describe('Where it ends, along the seam; null where no place is known.'),
    complete: z.boolean().describe('Whether it covers the planned length; false without a plan.'),
    arc_time_s: z.number().describe('Time the arc burned.'),
    brief_breaks: z.int().describe('Breaks of the arc too short to matter by themselves.'),
  })
  .meta({ id: 'RunPass', description: 'One pass as it was run.' });

const eventSchema = z
  .object({
    kind: z.enum(KINDS),
    pass: z.int().nullable().describe('Number of the pass it lies in.'),
    start_s: z.number().describe('Elapsed time of the log where it begins.'),
    end_s: z.number().describe('Elapsed time of the log where it ends.'),
    from_mm: place.describe('Where it begins, along the seam; null where no place is known.'),
    to_mm: place.describe('Where it ends, along the seam; null where no place is known.'),
    from_deg: place.describe('On a girth, from its start; null on a straight seam.'),
    to_deg: place.describe('Where it ends, around the part; null where no angle is known.'),
    place_sd_mm: place.describe('Standard deviation of both places.'),
    first_row: z.int().describe('First data row that shows it, from 1.'),
    last_row: z.int().describe('Last data row that shows it.'),
    says: sentenceSchema,
    causes: z
      .array(
        z.object({
          cause: z.string().describe('Identifier of the cause.'),
          title: z.string().describe('Name, in words.'),
          probability: z.number().describe('After what the log shows [-].'),
          remedy: z.string().describe('What mends it, in words.'),
        }),
      )
      .describe('The likeliest causes; none where the event says nothing of the rig.'),
    next_check: z
      .object({
        check: z.string().describe('Identifier of the check.'),
        title: z.string().describe('Name, in words.'),
        ask: z.string().describe('What to look at, in words.'),
      })
      .nullable()
      .describe('The check that tells most per minute.'),
  })
  .meta({ id: 'RunEvent', description: 'Something that happened, in time and on the seam.' });

const chancesSchema = z
  .object({
    reached: z.number().describe('Depth reached everywhere it must be [-].'),
    not_too_deep: z.number().describe('No point too deep [-].'),
    ligament_kept: z.number().describe('Least plate left kept [-].'),
  })
  .meta({ id: 'RunChances', description: 'Chances counted over shops as they may be.' });

const recutSchema = z
  .object({
    from_mm: z.number().describe('Where it begins, along the seam.'),
    to_mm: z.number().describe('Where it ends, along the seam.'),
    current_A: z.number().describe('Current that is set.'),
    arc_voltage_V: z.number().describe('Arc voltage that is set.'),
    travel_mm_per_min: z
      .number()
      .describe(
        'Travel that is set: of the passes before the gauge stop where there is one; where it is gauged first, of the middle row of the table.',
      ),
    passes: z.int().describe('Passes on top of each other.'),
    passes_before_gauge: z.int().describe('Those before the gauge stop; all where there is none.'),
    gauge: stopSchema
      .nullable()
      .describe('Where the stretch is gauged, with the table; null without a stop.'),
    dwell_s: z.number().describe('Time the arc burns before the carriage travels.'),
    depth_mm: bandSchema.describe('What one pass at that travel takes off.'),
    ramp_mm: z.number().describe('Length of run-in and of run-out, each inside its ends.'),
    chances: chancesSchema
      .nullable()
      .describe('Of the stretch afterwards; null while passes of the plan remain.'),
  })
  .meta({ id: 'Recut', description: 'A short plan: run-in and run-out included.' });

const stretchSchema = z
  .object({
    kind: z.enum(['ungouged', 'shallow', 'deep']),
    pass: z.int().nullable().describe('Pass that left it; null where all together do.'),
    from_mm: z.number().describe('Where it begins, along the seam.'),
    to_mm: z.number().describe('Where it ends, along the seam.'),
    depth_mm: place.describe('Median of the depth at its worst place; null for an ungouged one.'),
    says: sentenceSchema,
    recut: recutSchema.nullable(),
  })
  .meta({
    id: 'RunStretch',
    description: 'A stretch that is not as it ought to be, and what to do about it.',
  });

const remainingSchema = z
  .object({
    passes: z.array(z.int()).describe('Passes of the plan that were not run.'),
    depth_now_mm: z.number().describe('Mean over the seam of the median depth so far.'),
    depth_end_mm: z.number().describe('Mean depth that the plan leads to.'),
    travel_planned_mm_per_min: z.number().describe('Travel as planned.'),
    travel_mm_per_min: z
      .number()
      .nullable()
      .describe(
        'Travel of the passes that remain, of those before the gauge stop where there is one; null where there is none.',
      ),
    passes_to_run: z.int().describe('Passes from here on; 0 where the groove is left as it is.'),
    gauge: stopSchema.nullable().describe('The stop to gauge at, with its table; null without one.'),
    expected_mm: bandSchema.describe('Mean depth in the end.'),
    now_mm: bandSchema.describe('Mean depth so far.'),
    chances: chancesSchema,
    meets: z.boolean().describe('Whether every chance is as high as the job asks.'),
    apart: z
      .array(
        z.object({
          from_mm: z.number().describe('Where it begins, along the seam.'),
          to_mm: z.number().describe('Where it ends, along the seam.'),
        }),
      )
      .describe('Stretches that have no part in the plan, as much more was put into them.'),
    says: sentenceSchema,
  })
  .meta({ id: 'RemainingPasses', description: 'The rest of the plan from the depth now expected.' });

/** What a log tells of a run, as it leaves the engine. */
export const runSchema = z
  .object({
    verdict: z.array(sentenceSchema).describe('The run in words, what matters most first.'),
    inputs: runInputsSchema,
    reading: readingSchema,
    totals: totalsSchema,
    passes: z.array(passSchema).describe('Each pass, in the order of the work.'),
    events: z.array(eventSchema).describe('What happened, in the order of time.'),
    events_not_listed: z.int().describe('Further events of a log that is full of them.'),
    depth: z
      .array(
        z.object({
          at_mm: z.number().describe('Place from the start of the seam.'),
          p05_mm: z.number().describe('5th percentile.'),
          p50_mm: z.number().describe('Median.'),
          p95_mm: z.number().describe('95th percentile.'),
        }),
      )
      .describe('Depth predicted along the seam; empty without a job.'),
    wanted: z
      .object({
        depth_mm: z.number().describe('Depth below the plate.'),
        least_mm: z.number().describe('Least that is accepted.'),
        most_mm: z.number().describe('Greatest that is accepted.'),
        length_mm: z.number().describe('Length along the seam.'),
      })
      .nullable()
      .describe('What the job asks for; null without one.'),
    stretches: z.array(stretchSchema),
    remaining: remainingSchema.nullable().describe('Null without a plan, or when it is run.'),
    fits_job: z
      .boolean()
      .nullable()
      .describe('False where the log seems to be of another job; null without one.'),
    cannot_tell: z.array(sentenceSchema).describe('What the log cannot tell.'),
  })
  .meta({ id: 'Run', description: 'What a log tells of a run.' });

/** What a log tells of a run, as it leaves the engine. */
export type RunReport = Stated<typeof runSchema>;

/** What a job asks for, in SI. */
export interface WantedDepth {
  /** Wanted depth [m]. */
  readonly depth: number;
  /** Least that it may be [m]. */
  readonly least: number;
  /** Most that it may be [m]. */
  readonly most: number;
  /** Length of the seam [m]. */
  readonly length: number;
}

/** What a review is stated from, in SI. */
export interface RunStatement {
  readonly verdict: readonly Sentence[];
  readonly inputs: RunReport['inputs'];
  readonly reading: ReadingReport;
  readonly outcome: RunOutcome;
  /** Length of the seam that is a full turn; undefined for a straight one [m]. */
  readonly turn: number | undefined;
  readonly causes: (event: RunEvent) => EventCauses | undefined;
  readonly along: DepthAlong | undefined;
  readonly wanted: WantedDepth | undefined;
  /** Electrode burnt; undefined where nothing tells it [m]. */
  readonly electrodeUsed: number | undefined;
  /** Electrode that the passes run were planned to burn; undefined without a plan [m]. */
  readonly electrodePlanned: number | undefined;
  readonly stretches: readonly SeamStretch[];
  readonly remaining: RemainingPasses | undefined;
  readonly fits: boolean | undefined;
  readonly cannotTell: readonly Sentence[];
}

/** The rest of a plan, in SI. */
export interface RemainingPasses {
  /** Numbers of the passes that were not run [-]. */
  readonly passes: readonly number[];
  /** Mean depth so far [m]. */
  readonly now: number;
  /** Mean depth in the end [m]. */
  readonly end: number;
  /** Travel as planned [m/s]. */
  readonly planned: number;
  /** What the planner finds from here. */
  readonly plan: OntoFloorPlan;
  /** The stop to gauge at; undefined without one. */
  readonly stop: StopOutcome | undefined;
  /** Stretches that have no part in the plan, as much more was put into them. */
  readonly apart: readonly {
    /** Where it begins [m]. */
    readonly from: number;
    /** Where it ends [m]. */
    readonly to: number;
  }[];
  readonly says: Sentence;
}

/** Rows from which the ripple of a three-phase rectifier at 300 Hz is followed [1/s]: Nyquist's rate with some room. */
const RIPPLE_RATE = 1000;
/** Places of the depth that are stated at most [-]. */
const PLACES_MOST = 400;

const mm = (value: number | undefined): number | null => (value === undefined ? null : inUnit(value, 'mm'));
const orNull = (value: number | undefined): number | null => value ?? null;

/**
 * States a review with units in its keys.
 *
 * @param run - the review and what was made of it [record], in SI
 * @returns the report [record]
 * @source none: bookkeeping
 * @example
 * const totals = { arcTime: 90, arcOutTime: 0, energy: 3.6e6 };
 * const outcome = { channels: ['current_A'], totals, interval: 0.01, notListed: {}, passes: [], events: [] };
 * stateRun({ verdict: [], outcome, stretches: [], cannotTell: [] }).totals.arc_energy_kJ // => 3600
 */
export function stateRun(run: RunStatement): RunReport {
  const { outcome, along, turn } = run;
  const { totals, channels } = outcome;
  const tells = channels.includes('voltage_V') || channels.includes('current_A');
  const degrees = (at: number | undefined): number | null =>
    at === undefined || turn === undefined ? null : (at / turn) * 360;
  const listed = Object.values(outcome.notListed).reduce((sum, count) => sum + count, 0);
  return {
    verdict: [...run.verdict],
    inputs: run.inputs,
    reading: run.reading,
    totals: {
      arc_time_s: tells ? totals.arcTime : null,
      arc_out_time_s: tells ? totals.arcOutTime : null,
      mean_arc_voltage_V: orNull(totals.voltage),
      mean_current_A: orNull(totals.current),
      arc_energy_kJ: totals.energy === undefined ? null : inUnit(totals.energy, 'kJ'),
      energy_by:
        totals.energy === undefined ? null : 1 / outcome.interval >= RIPPLE_RATE ? 'instants' : 'means',
      travelled_mm: mm(totals.travelled),
      gouged_mm: mm(totals.gouged),
      electrode_used_mm: mm(run.electrodeUsed),
      electrode_planned_mm: mm(run.electrodePlanned),
    },
    passes: outcome.passes.map((pass) => ({
      number: pass.number,
      planned: orNull(pass.planned),
      start_s: pass.start,
      end_s: pass.end,
      from_mm: mm(pass.from),
      to_mm: mm(pass.to),
      complete: pass.complete,
      arc_time_s: pass.totals.arcTime,
      brief_breaks: pass.brief,
    })),
    events: outcome.events.map((event) => {
      const behind = run.causes(event);
      return {
        kind: event.kind,
        pass: orNull(event.pass),
        start_s: event.start,
        end_s: event.end,
        from_mm: mm(event.from),
        to_mm: mm(event.to),
        from_deg: degrees(event.from),
        to_deg: degrees(event.to),
        place_sd_mm: mm(event.placeSd),
        first_row: event.firstRow,
        last_row: event.lastRow,
        says: event.says,
        causes: [...(behind?.causes ?? [])],
        next_check: behind?.nextCheck ?? null,
      };
    }),
    events_not_listed: listed,
    depth: along === undefined ? [] : depthPlaces(along),
    wanted:
      run.wanted === undefined
        ? null
        : {
            depth_mm: inUnit(run.wanted.depth, 'mm'),
            least_mm: inUnit(run.wanted.least, 'mm'),
            most_mm: inUnit(run.wanted.most, 'mm'),
            length_mm: inUnit(run.wanted.length, 'mm'),
          },
    stretches: run.stretches.map(({ kind, pass, from, to, depth, says, recut }) => ({
      kind,
      pass: orNull(pass),
      from_mm: inUnit(from, 'mm'),
      to_mm: inUnit(to, 'mm'),
      depth_mm: mm(depth),
      says,
      recut: recut === undefined ? null : stateRecut(recut),
    })),
    remaining: run.remaining === undefined ? null : stateRemaining(run.remaining),
    fits_job: run.fits ?? null,
    cannot_tell: [...run.cannotTell],
  };
}

function depthPlaces(along: DepthAlong): RunReport['depth'] {
  const count = Math.min(PLACES_MOST, along.cells);
  return Array.from({ length: count }, (_, i) => {
    const cell = Math.floor(((i + 0.5) * along.cells) / count);
    return {
      at_mm: inUnit((cell + 0.5) * along.cell, 'mm'),
      p05_mm: inUnit(along.at(cell, 0.05), 'mm'),
      p50_mm: inUnit(along.at(cell, 0.5), 'mm'),
      p95_mm: inUnit(along.at(cell, 0.95), 'mm'),
    };
  });
}

function stateRecut({
  from,
  to,
  current,
  voltage,
  travel,
  passes,
  passesBefore,
  stop,
  dwell,
  depth,
  ramp,
  chances,
}: Recut): RunReport['stretches'][number]['recut'] {
  return {
    from_mm: inUnit(from, 'mm'),
    to_mm: inUnit(to, 'mm'),
    current_A: current,
    arc_voltage_V: voltage,
    travel_mm_per_min: inUnit(travel, 'mm_per_min'),
    passes,
    passes_before_gauge: passesBefore,
    gauge: stop === undefined ? null : stateStop(stop),
    dwell_s: dwell,
    depth_mm: {
      p05: inUnit(depth.p05, 'mm'),
      p50: inUnit(depth.p50, 'mm'),
      p95: inUnit(depth.p95, 'mm'),
    },
    ramp_mm: inUnit(ramp, 'mm'),
    chances: chances === undefined ? null : stateChances(chances),
  };
}

function stateRemaining({
  passes,
  now,
  end,
  planned,
  plan,
  stop,
  apart,
  says,
}: RemainingPasses): RunReport['remaining'] {
  const band = ({ p05, p50, p95 }: OntoFloorPlan['after']) => ({
    p05: inUnit(p05, 'mm'),
    p50: inUnit(p50, 'mm'),
    p95: inUnit(p95, 'mm'),
  });
  const travelOf = (travel: number | undefined): number | null =>
    travel === undefined ? null : inUnit(travel, 'mm_per_min');
  return {
    passes: [...passes],
    depth_now_mm: inUnit(now, 'mm'),
    depth_end_mm: inUnit(end, 'mm'),
    travel_planned_mm_per_min: inUnit(planned, 'mm_per_min'),
    travel_mm_per_min: travelOf(plan.travel),
    passes_to_run: plan.passes,
    gauge: stop === undefined ? null : stateStop(stop),
    expected_mm: band(plan.after),
    now_mm: band(plan.before),
    chances: stateChances(plan.chances),
    meets: plan.meets,
    apart: apart.map(({ from, to }) => ({ from_mm: inUnit(from, 'mm'), to_mm: inUnit(to, 'mm') })),
    says,
  };
}

function stateChances({
  reached,
  notTooDeep,
  ligamentKept,
}: OntoFloorChances): z.output<typeof chancesSchema> {
  return { reached, not_too_deep: notTooDeep, ligament_kept: ligamentKept };
}
