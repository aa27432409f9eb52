import { issueCodeSchema, issueSchema } from '@furrow/engine';
import { z } from 'zod';
import { savedJobSchema } from './saved-job-schema.ts';

/** Body of every answer that is not a success. */
export const errorSchema = z
  .object({
    code: issueCodeSchema,
    message: z.string().describe('One sentence a person can act on.'),
    issues: z.array(issueSchema).exactOptional().describe('What is wrong with the text sent, one by one.'),
  })
  .meta({ id: 'Error' });

/** Body of the answer to a save that would have overwritten a newer revision. */
export const conflictSchema = z
  .object({
    code: z.literal('JOB_CHANGED_MEANWHILE'),
    message: z.string().describe('One sentence a person can act on.'),
    newer: savedJobSchema.describe('The job as it is saved now.'),
  })
  .meta({ id: 'Conflict' });

/** Body of every answer that is not a success. */
export type ErrorBody = z.output<typeof errorSchema>;

/** Body of the answer to a save that would have overwritten a newer revision. */
export type ConflictBody = z.output<typeof conflictSchema>;
