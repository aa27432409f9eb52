import { ISSUE_CODES, type IssueCode } from '@furrow/engine';
import { z } from 'zod';

/** Code of an expected failure: a key of the one table. */
export const issueCodeSchema = z.enum(Object.keys(ISSUE_CODES) as [IssueCode, ...IssueCode[]]).meta({
  id: 'IssueCode',
  description: 'Code of an expected failure; the table of codes tells what each means.',
});

/** One expected failure: where, what was read, what is accepted, what is nearest. */
export const issueSchema = z
  .object({
    code: issueCodeSchema,
    message: z.string().describe('One sentence a person in the shop can act on.'),
    path: z.string().describe('Path of the field in the job, such as groove.depth.wanted.'),
    read: z.string().exactOptional().describe('What was read, as written.'),
    accepted: z.string().exactOptional().describe('What is accepted here, in words.'),
    nearest: z.string().exactOptional().describe('The nearest thing that would be accepted.'),
    position: z
      .object({ line: z.int().min(1), column: z.int().min(1) })
      .exactOptional()
      .describe('Line and column in the text, counted from 1.'),
  })
  .meta({ id: 'Issue' });
