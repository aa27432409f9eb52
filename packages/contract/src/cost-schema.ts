import { COST_PARTS, CYCLE_STEPS } from '@furrow/engine';
import { z } from 'zod';
import { limitSchema } from './limit-schema.ts';

const estimateSchema = z
  .object({
    p50: z.number().describe('Median, in the unit of the key.'),
    p90: z.number().describe('90th percentile, in the unit of the key.'),
    mean: z.number(),
    p50_half_width: z
      .number()
      .describe("Half width of the 95 % interval of the median's error by simulation alone."),
    p90_half_width: z.number().describe('The same of the 90th percentile.'),
  })
  .meta({
    id: 'CostEstimate',
    description:
      'A simulated quantity: median, 90th percentile, and how far each can be off for having only so many trials.',
  });

const sourceSchema = limitSchema.shape.source;

const stepSchema = z
  .object({
    step: z.enum(CYCLE_STEPS),
    title: z.string(),
    time_s: estimateSchema,
    time_share: z.number().describe('Its part of the mean time of the whole [-].'),
    cost: estimateSchema,
    cost_share: z.number().describe('Its part of the mean money of the whole [-].'),
  })
  .meta({ id: 'CostStep', description: 'One step of the whole cycle.' });

const itemSchema = z
  .object({
    part: z.enum(COST_PARTS),
    title: z.string(),
    cost: estimateSchema,
    cost_share: z.number().describe('Its part of the mean money of the whole [-].'),
  })
  .meta({ id: 'CostItem', description: 'One thing that money is spent on.' });

const refillSchema = z
  .object({
    process: z.string(),
    gouged_area_mm2: z.number().describe('Section as gouged [mm2].'),
    ground_area_mm2: z.number().describe('Section after the skin is ground off [mm2].'),
    skin_allowance_mm: z.number().describe('Ground off the face [mm].'),
    weld_metal_kg: z.number().describe('Weld metal, cap included [kg].'),
    skin_weld_metal_kg: z.number().describe('What of the weld metal the grinding adds [kg].'),
    filler_kg: z.number().describe('Filler as bought [kg].'),
    arc_time_s: z.number().describe('Time with the arc of the re-weld burning [s].'),
    time_s: z.number().describe('Time of the welder at the usual pace [s].'),
  })
  .meta({ id: 'RefillReport', description: 'What fills the median groove again.' });

const extraSchema = z
  .object({
    deeper_mm: z.number(),
    wider_mm: z.number(),
    weld_metal_kg: z.number().describe('More weld metal over the whole seam [kg].'),
    weld_metal_percent: z.number().describe('The same over what the planned groove takes [%].'),
    time_s: z.number().describe('More time at the usual pace [s].'),
    cost: z.number().describe('More money, in `currency`.'),
    cost_per_m: z.number().describe('More money for one metre, in `currency`.'),
  })
  .meta({
    id: 'ExtraReport',
    description: 'What a groove larger than planned takes more in grinding and weld metal.',
  });

const waySchema = z
  .object({
    way: z.enum(['planned', 'manual_gouging', 'grinding', 'chipping', 'machining']),
    title: z.string(),
    rate: z.enum(['planned', 'stated', 'assumed', 'missing']),
    note: z.string(),
    source: sourceSchema,
    groove_time_s: z.number().nullable().describe('Time that making the groove takes [s].'),
    time_s: z.number().nullable().describe('Time of the whole job [s].'),
    cost: z.number().nullable().describe('Money of the whole job, in `currency`.'),
    cost_per_m: z.number().nullable().describe('Money for one metre, in `currency`.'),
    planned_cheaper_from_m: z
      .number()
      .nullable()
      .describe('Seam from which on the planned way is the cheaper one [m]; null where none is long enough.'),
  })
  .meta({
    id: 'WayReport',
    description: 'One way to make the groove, all work after it included, at medians and usual durations.',
  });

const reportSchema = z
  .object({
    kind: z.literal('cost'),
    currency: z.string(),
    seam_length_m: z.number(),
    trials: z.int(),
    seed: z.int(),
    time_s: estimateSchema,
    cost: estimateSchema,
    cost_per_m: estimateSchema,
    reworked: z.number().describe('Share of the trials in which the depth was not reached at first [-].'),
    steps: z.array(stepSchema),
    items: z.array(itemSchema),
    refill: refillSchema,
    extra: z.array(extraSchema),
    ways: z.array(waySchema),
    assumptions: z.array(z.object({ topic: z.string(), text: z.string(), source: sourceSchema })),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'CostReport', description: 'Time and money of the whole job.' });

/** Time and money of a job, or why there is none. */
export const costSchema = z
  .discriminatedUnion('kind', [reportSchema, z.object({ kind: z.literal('no_plan'), says: z.string() })])
  .meta({ id: 'CostAnswer' });

/** What a change of job or kit makes of time and money, replanned. */
export const costChangeSchema = z
  .object({
    id: z.enum(['second_source', 'larger_electrode', 'wider_tolerance', 'hired_compressor']),
    title: z.string(),
    says: z.string(),
    outcome: z.enum(['replanned', 'no_plan', 'not_tried']),
    time_s: z.number().nullable().describe('Median time of the whole job with it [s].'),
    time_change_s: z.number().nullable().describe('The same less the median time without it [s].'),
    cost: z.number().nullable().describe("Median money with it, in the job's currency."),
    cost_change: z.number().nullable().describe('The same less the median money without it.'),
    cost_change_half_width: z
      .number()
      .nullable()
      .describe('What the number of trials can put into `cost_change` at most, half width.'),
    setting: z
      .object({ electrode_diameter_mm: z.number(), current_A: z.number(), passes: z.number() })
      .nullable(),
  })
  .meta({ id: 'CostChangeReport' });
