import { z } from 'zod';
import { shopSchema } from './account-schema.ts';

const count = z.int().min(0);

/** One shop beside the others. Demo and rehearsed runs count nowhere. */
export const shopFiguresSchema = z
  .object({
    shop: shopSchema,
    jobs: count.describe('Saved jobs outside the bin.'),
    gauged_jobs: count.describe('Of them, jobs on which something was gauged.'),
    recut_jobs: count.describe('Of the gauged jobs, those of which some stretch was cut again.'),
    recuts: count.describe('Stretches that were cut again.'),
    runs: count.describe('Runs whose logs are kept.'),
    runs_without_arc_time: count.describe('Of them, runs whose log tells no time with the arc burning.'),
    arc_h: z.number().min(0).describe('Time with the arc burning, of the other runs together.'),
    knowledge: z
      .object({
        trials: count.describe('Trials that count.'),
        jobs: count.describe('Gauged jobs that count.'),
        date: z.string().nullable().describe('Day of the latest entry.'),
        predictions: count.describe('Entries whose depth was predicted from those before.'),
        inside_90: count.describe('Of them, inside the 90 % band; nine in ten are expected.'),
        drift_sum: z.number().describe('Sum of standardised residuals beyond the allowance.'),
        drift_limit: z.number().describe('Sum at which it is called a drift.'),
        drift_says: z.string().describe('In words.'),
      })
      .nullable()
      .describe('What it has learned; null where it has no trials that can be read.'),
    unreadable: count.describe('Records of jobs that cannot be read, and so count nowhere.'),
  })
  .meta({ id: 'ShopFigures' });

/** One shop beside the others. */
export type ShopFigures = z.output<typeof shopFiguresSchema>;
