import { runSchema } from '@furrow/engine';
import { z } from 'zod';
import { keepableTextSchema } from './keepable-text.ts';
import { REVISION_MOST } from './revision-number.ts';

const NAME_MOST = 200;
const LOGGER_MOST = 200_000;

const name = keepableTextSchema
  .min(1)
  .max(NAME_MOST)
  .describe('What the run is called: its file, or the rig.');
const sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/u)
  .describe('SHA-256 of the file, in hex.');
const revisionNumber = z.int().min(1).max(REVISION_MOST);

/** A file that was sent, as it is known from now on. */
export const originalSchema = z
  .object({ sha256, bytes: z.number().int().describe('Length of the file [bytes].') })
  .meta({ id: 'Original' });

/** What is asked of a program that reads registers. */
const registerSchema = z
  .object({
    name: keepableTextSchema
      .min(1)
      .max(60)
      .describe('Name of the reading, with its unit, such as `arc voltage [V]`.'),
    address: z.int().min(0).max(65_535).describe('Address of its first register, from 0.'),
    table: z.enum(['holding', 'input']).default('holding').describe('Table of registers that it stands in.'),
    type: z
      .enum(['uint16', 'int16', 'uint32', 'int32', 'float32'])
      .default('uint16')
      .describe('How it is kept; two registers hold the upper half first.'),
    scale: z.number().default(1).describe('What the number read is multiplied by.'),
  })
  .meta({ id: 'ModbusRegister' });

/** Where the readings of a live run come from. */
export const liveSourceSchema = z
  .discriminatedUnion('kind', [
    z
      .object({ kind: z.literal('http') })
      .describe('Any program posts newline JSON to the frames of the run.'),
    z
      .object({
        kind: z.literal('mqtt'),
        url: keepableTextSchema
          .max(500)
          .describe('mqtt:// or mqtts://, with a user where there is one; never with a password.'),
        password_env: z
          .string()
          .regex(/^FURROW_BROKER_[A-Z0-9_]{1,60}$/u)
          .exactOptional()
          .describe(
            'Variable of the environment of the program that holds the password of the user: FURROW_BROKER_ and a name.',
          ),
        topic: keepableTextSchema.min(1).max(500).describe('Topic of the rig, without wildcards.'),
        client_id: keepableTextSchema
          .min(1)
          .max(100)
          .exactOptional()
          .describe('The same at each start; made of the run where it is left out.'),
      })
      .describe('One topic of an MQTT broker, at QoS 1 in a lasting session.'),
    z
      .object({
        kind: z.literal('modbus'),
        host: keepableTextSchema.min(1).max(253).describe('Name or address of the device.'),
        port: z.int().min(1).max(65_535).default(502).describe('Port of the device.'),
        unit: z.int().min(0).max(255).default(1).describe('Number of the unit behind that address.'),
        interval_ms: z.int().min(20).max(60_000).default(100).describe('Time between two readings [ms].'),
        registers: z.array(registerSchema).min(1).max(32).describe('What is read each time.'),
      })
      .describe('Registers read over Modbus TCP.'),
    z
      .object({
        kind: z.literal('rehearsal'),
        faults: keepableTextSchema
          .max(2000)
          .default('')
          .describe('What goes wrong, as a rehearsal is told; empty for nothing.'),
        seed: z
          .int()
          .min(0)
          .max(2 ** 32 - 1)
          .default(1)
          .describe('Seed of what is played: the same plays the same.'),
      })
      .describe('A rig that is played, in its own time: marked as a rehearsal everywhere.'),
  ])
  .meta({ id: 'LiveSource' });

const runFields = {
  id: z.uuid().describe('Identifier of the run; sent again with it, a run is not kept twice.'),
  name,
  revision_number: revisionNumber.describe('Number of the revision of the job that was run.'),
};

const logger = keepableTextSchema
  .max(LOGGER_MOST)
  .exactOptional()
  .describe('Logger description by which the file is read, YAML or JSON.');

/** Body of a request that keeps a run of a file that was sent before. */
export const runKeepSchema = z.object({ ...runFields, sha256, logger }).meta({ id: 'RunKeep' });

/** Body of a request that begins a live run. */
export const runBeginSchema = z
  .object({ ...runFields, source: liveSourceSchema, logger })
  .meta({ id: 'RunBegin' });

/** What a list shows of a review. */
export const runSummarySchema = z
  .object(
    runSchema.pick({ verdict: true, totals: true, passes: true }).extend({
      events: z
        .array(
          runSchema.shape.events.element.pick({
            kind: true,
            pass: true,
            start_s: true,
            end_s: true,
            from_mm: true,
            to_mm: true,
          }),
        )
        .describe('The first of the events.'),
    }).shape,
  )
  .meta({ id: 'RunSummary', description: 'What a list shows of a review: the first of the events.' });

const reviewSchema = z
  .object({
    program_version: z.string().describe('Version of the program that found it.'),
    reviewed_at: z.iso.datetime().describe('When it was reviewed.'),
    summary: runSummarySchema.nullable().describe('Null where the file could not be reviewed.'),
    trouble: z.string().nullable().describe('Why it could not.'),
  })
  .meta({ id: 'RunReview' });

/** A run that is kept, or that is under way. */
export const savedRunSchema = z
  .object({
    ...runFields,
    job_id: z.string().describe('Identifier of the saved job.'),
    revision: z.string().nullable().describe('Content hash of that revision; null for a draft.'),
    kit_revision_number: revisionNumber.nullable().describe('Revision of the kit at that time.'),
    knowledge_revision_number: revisionNumber.nullable().describe('Revision of the trials at that time.'),
    logger: z.string().nullable().describe('Logger description by which the file is read.'),
    rehearsal: z.boolean().describe('Whether no rig was run: such readings teach the shop nothing.'),
    live: z.boolean().describe('Whether readings still come in.'),
    source: z.string().nullable().describe('Where live readings come from, in words; null for a file.'),
    sha256: sha256.nullable().describe('SHA-256 of the file; null while the run is live.'),
    bytes: z.number().int().nullable().describe('Length of the file [bytes]; null while the run is live.'),
    begun_at: z.iso.datetime().describe('When it was kept, or began.'),
    review: reviewSchema.nullable().describe('What was found; null while its review is waited for.'),
  })
  .meta({ id: 'SavedRun' });

/** A run with everything that was found of it. */
export const openedRunSchema = z
  .object({
    ...savedRunSchema.shape,
    reviews: z
      .array(
        reviewSchema.omit({ summary: true }).extend({
          report: z
            .record(z.string(), z.unknown())
            .nullable()
            .describe('The report as that version stated it.'),
        }),
      )
      .describe('Newest first; each version of the program that reviewed it has one.'),
  })
  .meta({ id: 'OpenedRun' });

/** Parameters of an address that names a run. */
export const runParametersSchema = z.object({ id: keepableTextSchema.describe('Identifier of the run.') });

/** What became of the frames of one request. */
export const framesTakenSchema = z
  .object({
    kept: z.int().describe('Frames that are on disk.'),
    refused: z
      .array(
        z.object({
          line: z.int().describe('Number of the line in the request, from 1.'),
          why: z.string().describe('Why it was not taken.'),
        }),
      )
      .describe('The first of those not taken.'),
    refused_count: z.int().describe('How many were not taken.'),
  })
  .meta({ id: 'FramesTaken' });

const eventFields = runSchema.shape.events.element.shape;

const deviationSchema = z.object({
  kind: eventFields.kind,
  since_s: z.number().describe('Elapsed time of the log at which it began [s].'),
  duration_s: z.number().describe('How long it has lasted [s].'),
  at_mm: z
    .number()
    .nullable()
    .describe('Place on the seam where it began; null where nothing tells it [mm].'),
  says: eventFields.says,
});

/** What is told of a live run beside its readings. */
export const liveStateSchema = z
  .object({
    frames: z.int().describe('Frames that are on disk.'),
    readings: z.int().describe('Readings in them.'),
    refused: z.int().describe('Frames that were not taken.'),
    last_refusal: z.string().nullable().describe('Why the last of them was not; null where all were.'),
    age_ms: z.number().nullable().describe('Age of the last reading; null before the first [ms].'),
    says: z.string().describe('What the source last told of itself.'),
    trouble: z.string().nullable().describe('Why readings cannot be kept at the moment.'),
    deviations: z
      .array(deviationSchema)
      .default([])
      .describe('What is otherwise than planned at the last reading; none without a plan.'),
    over: z
      .array(deviationSchema)
      .default([])
      .describe('The last deviations that are over, oldest first; none without a plan.'),
  })
  .meta({ id: 'LiveState' });

/** A logger description that is kept. */
export const savedLoggerSchema = z
  .object({
    revision: z.string().describe('Content hash of the description.'),
    name: z.string().describe('What the logger is called; empty for none.'),
    text: z.string().describe('The description as it was kept.'),
    columns: z
      .array(z.string())
      .describe('Names of the columns that it knows, by which a file is recognised.'),
    saved_at: z.iso.datetime().describe('When it was kept.'),
  })
  .meta({ id: 'SavedLogger' });

/** Body of a request that keeps a logger description. */
export const loggerKeepSchema = z
  .object({ text: keepableTextSchema.max(LOGGER_MOST).describe('The description, YAML or JSON.') })
  .meta({ id: 'LoggerKeep' });

/** Parameters of an address that names a logger description. */
export const loggerParametersSchema = z.object({
  revision: keepableTextSchema.describe('Content hash of the description.'),
});

/** A file that was sent. */
export type Original = z.output<typeof originalSchema>;
/** Body of a request that keeps a run. */
export type RunKeep = z.input<typeof runKeepSchema>;
/** Body of a request that begins a live run. */
export type RunBegin = z.input<typeof runBeginSchema>;
/** Where the readings of a live run come from, defaults filled in. */
export type LiveSource = z.output<typeof liveSourceSchema>;
/** What a list shows of a review. */
export type RunSummary = z.output<typeof runSummarySchema>;
/** A run that is kept, or that is under way. */
export type SavedRun = z.output<typeof savedRunSchema>;
/** A run with everything that was found of it. */
export type OpenedRun = z.output<typeof openedRunSchema>;
/** What became of the frames of one request. */
export type FramesTaken = z.output<typeof framesTakenSchema>;
/** What is told of a live run beside its readings. */
export type LiveState = z.output<typeof liveStateSchema>;
/** A logger description that is kept. */
export type SavedLogger = z.output<typeof savedLoggerSchema>;
