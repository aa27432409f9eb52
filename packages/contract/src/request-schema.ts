import { z } from 'zod';
import { cardOptionFields } from './card-option-schema.ts';

/** What UTF-8 or a database cannot keep to the letter: halves of a surrogate pair, and the null character. */
const UNKEEPABLE = /[\p{Surrogate}\0]/u;

/** Revision numbers stay far within what both databases call an integer. */
const REVISION_MOST = 1_000_000_000;

const keepable = z
  .string()
  .refine((value) => !UNKEEPABLE.test(value), 'holds characters that cannot be saved');

const text = keepable.describe('The job file, YAML or JSON.');

/** Body of a request that carries a job: to save it for the first time or to plan it. */
export const jobTextSchema = z.object({ text }).meta({ id: 'JobText' });

/** Body of a request that saves a job again. */
export const jobSaveSchema = z
  .object({
    text,
    based_on: z
      .int()
      .min(1)
      .max(REVISION_MOST)
      .describe('Number of the revision that the text was made from.'),
  })
  .meta({ id: 'JobSave' });

/** Body of a request for the set-up card of a job that need not be saved. */
export const cardRequestSchema = z.object({ text, ...cardOptionFields }).meta({ id: 'CardRequest' });

/** Parameters of an address that names a job. */
export const jobParametersSchema = z.object({ id: keepable.describe('Identifier of the saved job.') });

/** Parameters of an address that names a revision. */
export const revisionParametersSchema = z.object({
  id: jobParametersSchema.shape.id,
  number: z.coerce.number().int().min(1).max(REVISION_MOST).describe('Number of the revision.'),
});

/** Body of a request that carries a job. */
export type JobText = z.input<typeof jobTextSchema>;

/** Body of a request that saves a job again. */
export type JobSave = z.input<typeof jobSaveSchema>;

/** Body of a request for a set-up card. */
export type CardRequest = z.input<typeof cardRequestSchema>;
