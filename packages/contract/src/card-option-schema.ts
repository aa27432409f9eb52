import { z } from 'zod';

/** The choices of a set-up card; both have a default. */
export const cardOptionFields = {
  units: z.enum(['inch', 'metric']).default('metric').describe('Units that amounts are written in.'),
  paper: z.enum(['a4', 'letter']).default('a4').describe('Size of the sheet.'),
};

/** The choices of a set-up card. */
export const cardOptionSchema = z.object(cardOptionFields);

/** The choices of the card of a saved job, as a query. */
export const savedCardOptionSchema = z.object({
  ...cardOptionFields,
  kit: z
    .enum(['shop', 'none'])
    .default('shop')
    .describe('`shop`: planned with the kit saved here, if there is one; `none`: without limits of supply.'),
  history: z
    .enum(['shop', 'none'])
    .default('shop')
    .describe(
      '`shop`: planned with what the shop has learned (a demo job, in a shop without trials of its own: with those ' +
        'invented for the demo); `none`: as a shop without history.',
    ),
});

/** The choices of a set-up card, defaults filled in. */
export type CardOptions = z.output<typeof cardOptionSchema>;

/** The choices of the card of a saved job, defaults filled in. */
export type SavedCardOptions = z.output<typeof savedCardOptionSchema>;
