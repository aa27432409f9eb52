import { z } from 'zod';
import { savedCardOptionSchema } from './card-option-schema.ts';
import { keepableTextSchema } from './keepable-text.ts';
import { jobParametersSchema } from './request-schema.ts';
import { REVISION_MOST } from './revision-number.ts';

const FILE_MOST = 60;
const KNOWLEDGE_ID_MOST = 100;

const file = keepableTextSchema
  .min(1)
  .max(FILE_MOST)
  .describe('Name of the file, such as `procedure-sheet.pdf` or `section.dxf`.');

const revisionNumber = z
  .int()
  .min(1)
  .max(REVISION_MOST)
  .describe('Number of the revision of the job that it was made from.');

/** One paper or drawing of a job, and whether what was printed of it is still good. */
const listedPaperSchema = z
  .object({
    file,
    title: z.string().describe('What the paper is called.'),
    page: z.string().nullable().describe('Name of its page to look at and print; null for a drawing.'),
    wanting: z.string().nullable().describe('Why there is none yet; null where there is one.'),
    printed: z
      .object({
        revision_number: revisionNumber,
        printed_at: z.iso.datetime().describe('When it was handed out.'),
        released_by: z
          .string()
          .nullable()
          .describe('Name of the account that handed it out; null where nobody signed in.'),
        superseded: z.boolean().describe('Whether job, kit or knowledge have changed since.'),
        changes: z.array(z.string()).describe('What has changed since, in words.'),
      })
      .nullable()
      .describe('The newest that was handed out; null where none was.'),
  })
  .meta({ id: 'ListedPaper' });

/** The papers and drawings of a job. */
export const paperListSchema = z
  .object({
    revision: z.string().describe('Content hash of the job that they are made from.'),
    revision_number: revisionNumber.nullable().describe('Its number; null for a demo job.'),
    kit_revision: z.string().nullable().describe('Content hash of the kit planned with; null without one.'),
    knowledge_id: z.string().describe('Name of the knowledge planned with.'),
    papers: z.array(listedPaperSchema).describe('In the order in which the work needs them.'),
  })
  .meta({ id: 'PaperList' });

/** The choices of a paper, as a query: those of the card. */
export const paperOptionSchema = savedCardOptionSchema;

/** Parameters of an address that names a paper of a saved job. */
export const jobPaperParametersSchema = z.object({ id: jobParametersSchema.shape.id, file });

/** Parameters of an address that names a demo job. */
export const exampleParametersSchema = z.object({
  name: keepableTextSchema.describe('Name of the demo job.'),
});

/** Parameters of an address that names a paper of a demo job. */
export const examplePaperParametersSchema = z.object({ name: exampleParametersSchema.shape.name, file });

/** Body of a request for a paper that is filled in from what was run and gauged. */
export const filledPaperSchema = z
  .object({ readings: keepableTextSchema.describe('The readings file, YAML or JSON.') })
  .meta({ id: 'FilledPaper' });

/** Body of a request that says that a paper was handed out. */
export const printedSchema = z
  .object({
    file,
    revision_number: revisionNumber.describe('Number of the revision of the job that it was made from.'),
    kit_revision: z
      .string()
      .regex(/^[0-9a-f]{64}$/)
      .nullable()
      .describe('Content hash of the kit that it was planned with; null without one.'),
    knowledge_id: keepableTextSchema
      .min(1)
      .max(KNOWLEDGE_ID_MOST)
      .nullable()
      .default(null)
      .describe('Name of the knowledge that it was planned with; null where it is not known.'),
  })
  .meta({ id: 'Printed' });

/** The papers and drawings of a job. */
export type PaperList = z.output<typeof paperListSchema>;

/** One paper or drawing of a job. */
export type ListedPaper = PaperList['papers'][number];

/** Body of a request that says that a paper was handed out. */
export type Printed = z.input<typeof printedSchema>;

/** Body of a request for a paper that is filled in from what was run and gauged. */
export type FilledPaper = z.input<typeof filledPaperSchema>;

/** The choices of a paper, defaults filled in. */
export type PaperChoices = z.output<typeof paperOptionSchema>;
