import { z } from 'zod';
import { cardOptionFields } from './card-option-schema.ts';
import { keepableTextSchema } from './keepable-text.ts';
import { REVISION_MOST } from './revision-number.ts';

const text = keepableTextSchema.describe('The job file, YAML or JSON.');
const kit = keepableTextSchema
  .exactOptional()
  .describe('The kit file, YAML or JSON; without it the plan knows no limits of supply.');

const knowledge = keepableTextSchema
  .exactOptional()
  .describe(
    'The trials file, YAML or JSON, that the plan is made with; the published rows alone without it.',
  );

/** Body of a request that carries a job: to save it for the first time. */
export const jobTextSchema = z
  .object({
    text,
    id: z
      .uuid()
      .exactOptional()
      .describe('Identifier that the job is to have; sent again with it, a job is not saved twice.'),
  })
  .meta({ id: 'JobText' });

/** Body of a request for the plan of a job, with or without the kit it has to get by with. */
export const planRequestSchema = z.object({ text, kit, knowledge }).meta({ id: 'PlanRequest' });

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
export const cardRequestSchema = z
  .object({ text, kit, knowledge, ...cardOptionFields })
  .meta({ id: 'CardRequest' });

/** Parameters of an address that names a job. */
export const jobParametersSchema = z.object({
  id: keepableTextSchema.describe('Identifier of the saved job.'),
});

/** Parameters of an address that names a file that was measured on a job. */
export const originalParametersSchema = z.object({
  id: jobParametersSchema.shape.id,
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/u)
    .describe('SHA-256 of the file, in hex.'),
});

/** Parameters of an address that names a revision. */
export const revisionParametersSchema = z.object({
  id: jobParametersSchema.shape.id,
  number: z.coerce.number().int().min(1).max(REVISION_MOST).describe('Number of the revision.'),
});

/** Body of a request that carries a job. */
export type JobText = z.input<typeof jobTextSchema>;

/** Body of a request for a plan. */
export type PlanRequest = z.input<typeof planRequestSchema>;

/** Body of a request that saves a job again. */
export type JobSave = z.input<typeof jobSaveSchema>;

/** Body of a request for a set-up card. */
export type CardRequest = z.input<typeof cardRequestSchema>;
