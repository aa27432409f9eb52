import { z } from 'zod';
import { COST_PARTS, CYCLE_STEPS } from '../cost/index.ts';
import { type Stated, sourceSchema } from '../limit/index.ts';

const estimateSchema = z
  .object({
    p50: z.number().describe('Median, in the unit of the key.'),
    p90: z.number().describe('90th percentile, in the unit of the key.'),
    mean: z.number().describe('Mean [unit of the key].'),
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

const stepSchema = z
  .object({
    step: z.enum(CYCLE_STEPS),
    title: z.string(),
    time_s: estimateSchema,
    time_share: z.number().describe('Its part of the mean time of the whole [-].'),
    cost: estimateSchema.describe('Money, in `currency`.'),
    cost_share: z.number().describe('Its part of the mean money of the whole [-].'),
  })
  .meta({ id: 'CostStep', description: 'One step of the whole cycle.' });

const itemSchema = z
  .object({
    part: z.enum(COST_PARTS),
    title: z.string(),
    cost: estimateSchema.describe('Money, in `currency`.'),
    cost_share: z.number().describe('Its part of the mean money of the whole [-].'),
  })
  .meta({ id: 'CostItem', description: 'One thing that money is spent on.' });

const refillSchema = z
  .object({
    process: z.string().describe('Process of the re-weld in words.'),
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
    deeper_mm: z.number().describe('Deeper by [mm].'),
    wider_mm: z.number().describe('Wider by [mm].'),
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
    rate: z
      .enum(['planned', 'stated', 'assumed', 'missing'])
      .describe('Where its rate comes from: the plan, the job, a marked assumption, or nowhere.'),
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

const assumptionSchema = z.object({ topic: z.string(), text: z.string(), source: sourceSchema }).meta({
  id: 'CostAssumption',
  description: 'A value that the cost rests on although the job does not state it.',
});

const reportSchema = z
  .object({
    kind: z.literal('cost'),
    currency: z.string().describe('Currency of all money as the job names it.'),
    seam_length_m: z.number().describe('Length of the seam [m].'),
    trials: z.int().describe('Trials of the simulation [-].'),
    seed: z.int().describe('Seed of its draws [-].'),
    time_s: estimateSchema.describe('Working time of the whole cycle, one step after the other [s].'),
    cost: estimateSchema.describe('Money of the whole job, in `currency`.'),
    cost_per_m: estimateSchema.describe('Money for one metre of seam, in `currency`.'),
    reworked: z.number().describe('Share of the trials in which the depth was not reached at first [-].'),
    steps: z.array(stepSchema),
    items: z.array(itemSchema),
    refill: refillSchema,
    extra: z.array(extraSchema),
    ways: z.array(waySchema),
    assumptions: z.array(assumptionSchema),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'CostReport', description: 'Time and money of the whole job.' });

const noCostSchema = z
  .object({ kind: z.literal('no_plan'), says: z.string() })
  .meta({ id: 'NoCost', description: 'Why there is nothing to tell of time and money.' });

/** Time and money of a job, or why there is none. */
export const costSchema = z
  .discriminatedUnion('kind', [reportSchema, noCostSchema])
  .meta({ id: 'CostAnswer' });

/** What a change of job or kit makes of time and money, replanned. */
export const costChangeSchema = z
  .object({
    id: z.enum(['second_source', 'larger_electrode', 'wider_tolerance', 'hired_compressor']),
    title: z.string(),
    says: z.string().describe('What was changed, or why it could not be tried.'),
    outcome: z
      .enum(['replanned', 'no_plan', 'not_tried'])
      .describe(
        '`replanned`: the figures hold; `no_plan`: nothing can be planned so; `not_tried`: it cannot be tried.',
      ),
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

/** A simulated quantity: median, 90th percentile, and how far each can be off. */
export type CostEstimate = Stated<typeof estimateSchema>;
/** One step of the whole cycle. */
export type CostStep = Stated<typeof stepSchema>;
/** One thing that money is spent on. */
export type CostItem = Stated<typeof itemSchema>;
/** What fills the median groove again. */
export type RefillReport = Stated<typeof refillSchema>;
/** What a groove larger than planned takes more. */
export type ExtraReport = Stated<typeof extraSchema>;
/** One way to make the groove, all work after it included. */
export type WayReport = Stated<typeof waySchema>;
/** A value that the cost rests on although the job does not state it. */
export type CostAssumptionReport = Stated<typeof assumptionSchema>;
/** Time and money of the whole job. */
export type CostReport = Stated<typeof reportSchema>;
/** Why there is nothing to tell of time and money. */
export type NoCost = Stated<typeof noCostSchema>;
/** Time and money of a job, or why there is none. */
export type CostAnswer = Stated<typeof costSchema>;
/** What a change of job or kit makes of time and money, replanned. */
export type CostChangeReport = Stated<typeof costChangeSchema>;
