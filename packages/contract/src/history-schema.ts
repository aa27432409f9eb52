import { z } from 'zod';
import { keepableTextSchema } from './keepable-text.ts';

/** Who saved something. */
export const savedBySchema = z
  .string()
  .nullable()
  .describe('Name of the account that saved it; null where nobody signed in.');

/** How many entries are given at once unless fewer are asked for [-]. */
const ENTRIES_MOST = 200;

/** Which entries of a history are asked for. */
export const historyQuestionSchema = z.object({
  before: z.coerce.number().int().min(1).optional().describe('Only entries before this number.'),
  kind: keepableTextSchema.max(40).optional().describe('Only those of this kind of thing, such as `job`.'),
  thing: keepableTextSchema.max(100).optional().describe('Only those of the thing of this identifier.'),
  limit: z.coerce.number().int().min(1).max(ENTRIES_MOST).default(50).describe('How many at most.'),
});

/** One entry of a history. */
export const historyEntrySchema = z
  .object({
    number: z.int().min(1).describe('From 1, without a gap.'),
    at: z.iso.datetime().describe('When it was done, by the clock of the server.'),
    who: z.string().nullable().describe('Name of the account or machine; null where nobody signed in.'),
    who_id: z.string().nullable().describe('Its identifier.'),
    act: z.string().describe('What was done, such as `save`, `erase` or `release`.'),
    kind: z.string().describe('What kind of thing it was done to, such as `job` or `paper`.'),
    thing: z.string().describe('Identifier of the thing.'),
    before: z.string().nullable().describe('What it was: a revision, or what was set.'),
    after: z.string().nullable().describe('What it is since.'),
    content: z.string().nullable().describe('SHA-256 of what is kept of it.'),
    previous: z.string().describe('Hash of the entry before.'),
    hash: z.string().describe('Hash of this entry, by which the next one holds it.'),
  })
  .meta({ id: 'HistoryEntry' });

/** One entry of a history. */
export type HistoryEntry = z.output<typeof historyEntrySchema>;
