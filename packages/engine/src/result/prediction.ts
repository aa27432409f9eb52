import { z } from 'zod';

/** Percentiles of a predicted quantity. */
export const bandSchema = z
  .object({
    p05: z.number().describe('5th percentile [unit of the key].'),
    p50: z.number().describe('Median [unit of the key].'),
    p95: z.number().describe('95th percentile [unit of the key].'),
  })
  .meta({ id: 'Band', description: '5th percentile, median and 95th percentile, in the unit of the key.' });

/** Median and 90th percentile. */
export const spreadSchema = z
  .object({
    p50: z.number().describe('Median [unit of the key].'),
    p90: z.number().describe('90th percentile [unit of the key].'),
  })
  .meta({ id: 'Spread', description: 'Median and 90th percentile, in the unit of the key.' });
