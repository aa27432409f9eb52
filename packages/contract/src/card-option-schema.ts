import { z } from 'zod';

/** The choices of a set-up card; both have a default. */
export const cardOptionFields = {
  units: z.enum(['inch', 'metric']).default('metric').describe('Units that amounts are written in.'),
  paper: z.enum(['a4', 'letter']).default('a4').describe('Size of the sheet.'),
};

/** The choices of a set-up card, as a query. */
export const cardOptionSchema = z.object(cardOptionFields);

/** The choices of a set-up card, defaults filled in. */
export type CardOptions = z.output<typeof cardOptionSchema>;
