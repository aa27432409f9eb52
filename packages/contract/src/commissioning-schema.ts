import { z } from 'zod';
import { faultCaseSchema, faultEvidenceSchema } from './fault-count-schema.ts';
import { keepableTextSchema } from './keepable-text.ts';
import { basedOnFromNoneSchema, revisionFromNoneSchema } from './revision-number.ts';

const NAME_MOST = 120;
const TYPED_MOST = 200;
const NOTE_MOST = 2000;
const ENTRIES_MOST = 500;

const name = keepableTextSchema.min(1).max(NAME_MOST);
const at = z.iso.datetime().describe('When it was first saved as it stands, by the clock of the server.');
const fewEnough = (entries: object): boolean => Object.keys(entries).length <= ENTRIES_MOST;
const tooMany = `holds at most ${ENTRIES_MOST} entries`;

const readingFields = {
  text: keepableTextSchema.max(TYPED_MOST).describe('The reading as it was typed.'),
  value: z.number().nullable().describe('The reading in SI units; null if it is no number.'),
  note: keepableTextSchema.max(NOTE_MOST).describe('What the person at the rig adds; empty if nothing.'),
};

const findingFields = {
  id: faultCaseSchema.shape.id,
  symptoms: faultEvidenceSchema,
  cause: name.nullable().describe('Identifier of the cause it turned out to be; null while not known.'),
  note: readingFields.note,
};

/** A reading taken before the first arc. */
const readingSchema = z.object({ ...readingFields, at }).meta({ id: 'CommissioningReading' });

/** What was found out about a fault at the rig. */
const findingSchema = z.object({ ...findingFields, at }).meta({ id: 'FaultFinding' });

/** What was ticked, read and found at the rig for a job, as it is kept. */
export const commissioningSchema = z
  .object({
    job_id: z.uuid().describe('Identifier of the saved job.'),
    revision_number: revisionFromNoneSchema,
    saved_at: z.iso.datetime().nullable().describe('When it was saved; null as long as nothing was.'),
    readings: z.record(z.string(), readingSchema).describe('By identifier of the check.'),
    ticks: z
      .record(z.string(), at)
      .describe('Connections done, by identifier of the row of the schedule, with the time of each.'),
    findings: z.array(findingSchema).describe('Faults looked into, in the order they came.'),
  })
  .meta({ id: 'Commissioning' });

/** Body of a request that saves it: the whole of it; what is left out is taken away. */
export const commissioningSaveSchema = z
  .object({
    readings: z
      .record(name, z.object(readingFields))
      .refine(fewEnough, tooMany)
      .describe('By identifier of the check.'),
    ticks: z.array(name).max(ENTRIES_MOST).describe('Identifiers of the rows of the schedule that are done.'),
    findings: z
      .array(z.object(findingFields))
      .max(ENTRIES_MOST)
      .describe('Faults looked into, in the order they came.'),
    based_on: basedOnFromNoneSchema,
  })
  .meta({ id: 'CommissioningSave' });

/** Body of the answer to a save that would have overwritten newer readings. */
export const commissioningConflictSchema = z
  .object({
    code: z.literal('COMMISSIONING_CHANGED_MEANWHILE'),
    message: z.string().describe('One sentence a person can act on.'),
    newer: commissioningSchema.describe('What is saved now.'),
  })
  .meta({ id: 'CommissioningConflict' });

/** What was ticked, read and found at the rig for a job. */
export type Commissioning = z.output<typeof commissioningSchema>;

/** Body of a request that saves it. */
export type CommissioningSave = z.input<typeof commissioningSaveSchema>;

/** Body of the answer to a save that would have overwritten newer readings. */
export type CommissioningConflict = z.output<typeof commissioningConflictSchema>;
