import { issueSchema } from '@furrow/engine';
import { z } from 'zod';
import { keepableTextSchema } from './keepable-text.ts';
import { basedOnFromNoneSchema, REVISION_MOST, revisionFromNoneSchema } from './revision-number.ts';

const kitFields = {
  title: z.string().describe('Title as the kit states it; empty as long as nothing was saved.'),
  revision: z
    .string()
    .nullable()
    .describe('Content hash of the kit as read, defaults included; null for a draft or for none.'),
};

/** The shop's kit: one, reused by every job. A draft with mistakes is kept as well. */
export const savedKitSchema = z
  .object({
    ...kitFields,
    revision_number: revisionFromNoneSchema,
    saved_at: z.iso.datetime().nullable().describe('When it was saved; null as long as nothing was.'),
    text: z.string().describe('The kit file as written; empty as long as nothing was saved.'),
    valid: z.boolean().describe('Whether jobs can be planned with the kit as it stands.'),
    issues: z.array(issueSchema).describe('What is wrong with the text; empty when valid or not saved yet.'),
  })
  .meta({ id: 'SavedKit' });

/** One line of the history of the kit. */
export const kitRevisionSummarySchema = z
  .object({ ...kitFields, revision_number: z.int().min(1), saved_at: z.iso.datetime() })
  .meta({ id: 'KitRevisionSummary' });

/** An earlier state of the kit, with its text. */
export const kitRevisionSchema = z
  .object({ ...kitRevisionSummarySchema.shape, text: z.string().describe('The kit file as saved then.') })
  .meta({ id: 'KitRevision' });

/** Body of a request that saves the kit. */
export const kitSaveSchema = z
  .object({
    text: keepableTextSchema.describe('The kit file, YAML or JSON.'),
    based_on: basedOnFromNoneSchema,
  })
  .meta({ id: 'KitSave' });

/** Body of the answer to a save that would have overwritten a newer kit. */
export const kitConflictSchema = z
  .object({
    code: z.literal('KIT_CHANGED_MEANWHILE'),
    message: z.string(),
    newer: savedKitSchema.describe('The kit as it is saved now.'),
  })
  .meta({ id: 'KitConflict' });

/** Parameters of an address that names a revision of the kit. */
export const kitRevisionParametersSchema = z.object({
  number: z.coerce.number().int().min(1).max(REVISION_MOST).describe('Number of the revision.'),
});

/** The shop's kit. */
export type SavedKit = z.output<typeof savedKitSchema>;

/** One line of the history of the kit. */
export type KitRevisionSummary = z.output<typeof kitRevisionSummarySchema>;

/** An earlier state of the kit, with its text. */
export type KitRevision = z.output<typeof kitRevisionSchema>;

/** Body of a request that saves the kit. */
export type KitSave = z.input<typeof kitSaveSchema>;

/** Body of the answer to a save that would have overwritten a newer kit. */
export type KitConflict = z.output<typeof kitConflictSchema>;
