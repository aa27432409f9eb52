import { z } from 'zod';

/** Percentiles of a predicted quantity, in the unit of its key. */
export const bandSchema = z
  .object({ p05: z.number(), p50: z.number(), p95: z.number() })
  .meta({ id: 'Band', description: '5th percentile, median and 95th percentile, in the unit of the key.' });

/** Median and 90th percentile, in the unit of the key. */
export const spreadSchema = z
  .object({ p50: z.number(), p90: z.number() })
  .meta({ id: 'Spread', description: 'Median and 90th percentile, in the unit of the key.' });
