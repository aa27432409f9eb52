import { issueSchema } from '@furrow/engine';
import { z } from 'zod';
import { savedBySchema } from './history-schema.ts';

const jobFields = {
  id: z.uuid().describe('Identifier of the saved job; it never changes.'),
  title: z.string().describe('Title as the job states it.'),
  revision: z
    .string()
    .nullable()
    .describe(
      'Content hash of the job as read, defaults included; null for a draft that cannot be read yet.',
    ),
  revision_number: z.int().min(1).describe('Number of the saved revision, from 1, one more with each save.'),
  saved_at: z.iso.datetime().describe('When this revision was saved.'),
  saved_by: savedBySchema,
};

/** One line of the list of saved jobs. */
export const jobSummarySchema = z
  .object({ ...jobFields, created_at: z.iso.datetime().describe('When the job was first saved.') })
  .meta({ id: 'JobSummary' });

/** A job in the bin. */
export const binnedJobSchema = z
  .object({
    ...jobSummarySchema.shape,
    deleted_at: z.iso.datetime().describe('When it was put into the bin.'),
  })
  .meta({ id: 'BinnedJob' });

/** A saved job with its text; a draft with mistakes is kept as well as a job that can be planned. */
export const savedJobSchema = z
  .object({
    ...jobSummarySchema.shape,
    text: z.string().describe('The job file as written, comments included.'),
    valid: z.boolean().describe('Whether the text can be planned as it stands.'),
    issues: z.array(issueSchema).describe('What is wrong with the text; empty when valid.'),
  })
  .meta({ id: 'SavedJob' });

/** One line of the history of a job. */
export const revisionSummarySchema = z
  .object({
    revision_number: jobFields.revision_number,
    revision: jobFields.revision,
    title: jobFields.title,
    saved_at: jobFields.saved_at,
    saved_by: jobFields.saved_by,
  })
  .meta({ id: 'RevisionSummary' });

/** An earlier state of a job, with its text. */
export const savedRevisionSchema = z
  .object({
    ...revisionSummarySchema.shape,
    id: jobFields.id,
    text: z.string().describe('The job file as it was saved then.'),
  })
  .meta({ id: 'SavedRevision' });

/** One line of the list of saved jobs. */
export type JobSummary = z.output<typeof jobSummarySchema>;

/** A job in the bin. */
export type BinnedJob = z.output<typeof binnedJobSchema>;

/** A saved job with its text. */
export type SavedJob = z.output<typeof savedJobSchema>;

/** One line of the history of a job. */
export type RevisionSummary = z.output<typeof revisionSummarySchema>;

/** An earlier state of a job, with its text. */
export type SavedRevision = z.output<typeof savedRevisionSchema>;
