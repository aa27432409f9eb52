import { z } from 'zod';
import { described, text } from '../document/index.ts';

const figure = (title: string, help: string) => described(z.number(), { title, help });
const counted = (title: string, help: string) => described(z.int().min(0).max(1_000_000), { title, help });

const spread = z.strictObject({
  sd: described(z.number().positive().max(10), {
    title: 'Spread',
    help: 'Standard deviation at this level.',
  }),
  worth: described(z.number().min(0).max(1e6), {
    title: 'Worth',
    help: 'How many observations it is known as well as.',
  }),
});

const quantity = z.strictObject({
  columns: z
    .array(text(200, { title: 'Column', help: 'What a coefficient stands for.' }))
    .min(1)
    .max(200),
  information: z
    .array(figure('Information', 'Precision of the coefficients, lower triangle row by row.'))
    .max(20_100),
  pull: z.array(figure('Pull', 'Precision times the best coefficients.')).max(200),
  spreads: z.strictObject({
    job: spread.optional(),
    pass: spread.optional(),
    seam: spread.optional(),
  }),
});

const shop = z.strictObject({
  shop: text(40, { title: 'Shop', help: 'Name of the shop.' }),
  id: text(60, {
    title: 'Identifier',
    help: 'Of what it was learned from: shop and revision of its trials.',
  }),
  trials: counted('Trials', 'Trials learned from.'),
  jobs: counted('Jobs', 'Gauged jobs learned from.'),
  date: text(10, { title: 'Day', help: 'Day of the latest of them.' }).optional(),
  invented: described(z.enum(['yes']), {
    title: 'Invented',
    help: 'Says that nothing of it was ever cut.',
  }).optional(),
  depth: quantity,
  extra_width: quantity,
  wear: quantity,
});

/** What shops have learned, as they exchange it: the one source of its types, its validation and its JSON Schema. */
export const summarySchema = z.strictObject({
  furrow_summary: described(z.literal(1), { title: 'Version', help: 'Version of the summary document.' }),
  shops: z.array(shop).min(1).max(100),
});

/** What shops have learned, as they exchange it. */
export type SummaryDocument = z.output<typeof summarySchema>;
/** What one shop has learned. */
export type ShopSummary = SummaryDocument['shops'][number];
/** What one shop has learned of one quantity. */
export type QuantitySummary = ShopSummary['depth'];
