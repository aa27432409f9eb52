import { z } from 'zod';
import { ISSUE_CODES, type IssueCode } from './codes.ts';

/** Code of an expected failure: a key of the one table. */
export const issueCodeSchema = z.enum(Object.keys(ISSUE_CODES) as [IssueCode, ...IssueCode[]]).meta({
  id: 'IssueCode',
  description: 'Code of an expected failure; the table of codes tells what each means.',
});

/** One expected failure, told to a person: where, what was read, what is accepted, what is nearest. */
export const issueSchema = z
  .object({
    code: issueCodeSchema,
    message: z.string().describe('One sentence a person in the shop can act on.'),
    path: z
      .string()
      .describe(
        'Path of the field in the document, such as groove.depth.wanted; empty for the whole document.',
      ),
    read: z.string().exactOptional().describe('What was read, as written.'),
    accepted: z.string().exactOptional().describe('What is accepted here, in words.'),
    nearest: z.string().exactOptional().describe('The nearest thing that would be accepted.'),
    position: z
      .object({
        line: z.int().min(1).describe('Line, from 1.'),
        column: z.int().min(1).describe('Column, from 1.'),
      })
      .readonly()
      .exactOptional()
      .describe('Line and column in the text, counted from 1.'),
  })
  .readonly()
  .meta({ id: 'Issue' });

/** One expected failure, told to a person. */
export type Issue = z.output<typeof issueSchema>;
/** Where in a file an issue lies: 1-based line and column. */
export type FilePosition = NonNullable<Issue['position']>;

/** A value or the issues that prevent it; never both, never half. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };
