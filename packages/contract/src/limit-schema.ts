import { STATED_UNITS } from '@furrow/engine';
import { z } from 'zod';

/** Demand against capacity, with what is needed to show and explain it. */
export const limitSchema = z
  .object({
    id: z.string(),
    title: z.string(),
    demand: z.number().describe('What the setting asks for, in `unit`.'),
    capacity: z.number().describe('What there is, in `unit`.'),
    unit: z.enum(STATED_UNITS),
    sense: z.enum(['most', 'least']),
    verdict: z.enum(['holds', 'tight', 'fails']),
    hard: z.boolean(),
    source: z.object({
      text: z.string(),
      provenance: z.enum(['confirmed', 'memory', 'derived', 'common practice', 'job file']),
    }),
    remedy: z.string(),
    sensitivity: z.array(z.object({ setting: z.string(), demand_percent: z.number() })),
  })
  .meta({ id: 'Limit' });
