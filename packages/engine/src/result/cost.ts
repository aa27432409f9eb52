import { z } from 'zod';
import {
  COST_PARTS,
  type CostOutcome,
  type CostPart,
  CYCLE_STEPS,
  type CycleStep,
  type Estimate,
  type ExtraMetal,
  type OtherWay,
  type WayTaken,
} from '../cost/index.ts';
import { type Stated, sourceSchema } from '../limit/index.ts';
import { inUnit, sentenceSchema } from '../quantity/index.ts';

const estimateSchema = z
  .object({
    p50: z.number().describe('Median, in the unit of the key.'),
    p90: z.number().describe('90th percentile, in the unit of the key.'),
    mean: z.number().describe('Mean [unit of the key].'),
    p50_half_width: z
      .number()
      .describe(
        "Half width of the 95 % interval of the median's error by simulation alone, in the unit of the key.",
      ),
    p90_half_width: z.number().describe('The same of the 90th percentile, in the unit of the key.'),
  })
  .meta({
    id: 'CostEstimate',
    description:
      'A simulated quantity: median, 90th percentile, and how far each can be off for having only so many trials.',
  });

const stepSchema = z
  .object({
    step: z.enum(CYCLE_STEPS),
    title: z.string().describe('Name, in words.'),
    time_s: estimateSchema,
    time_share: z.number().describe('Its part of the mean time of the whole [-].'),
    cost: estimateSchema.describe('Money, in `currency`.'),
    cost_share: z.number().describe('Its part of the mean money of the whole [-].'),
  })
  .meta({ id: 'CostStep', description: 'One step of the whole cycle.' });

const itemSchema = z
  .object({
    part: z.enum(COST_PARTS),
    title: z.string().describe('Name, in words.'),
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
    title: z.string().describe('Name, in words.'),
    rate: z
      .enum(['planned', 'stated', 'assumed', 'missing'])
      .describe('Where its rate comes from: the plan, the job, a marked assumption, or nowhere.'),
    note: z.string().describe('What is to be known of it, in words.'),
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

const assumptionSchema = z
  .object({ topic: z.string().describe('What it is about.'), text: sentenceSchema, source: sourceSchema })
  .meta({
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
    priced: z
      .boolean()
      .describe(
        'Whether the job states a labour rate; where it does not, the largest part is missing and no money here is a price of the work.',
      ),
    unpriced: z
      .array(z.enum(COST_PARTS))
      .describe('What the job takes or may take and states no price for, so that it counts nothing.'),
    reworked: z.number().describe('Share of the trials in which the depth was not reached at first [-].'),
    steps: z.array(stepSchema),
    items: z.array(itemSchema),
    refill: refillSchema,
    extra: z.array(extraSchema),
    ways: z.array(waySchema),
    assumptions: z.array(assumptionSchema),
    cautions: z.array(z.string()).describe('What to look at before this is relied on.'),
  })
  .meta({ id: 'CostReport', description: 'Time and money of the whole job.' });

const noCostSchema = z
  .object({ kind: z.literal('no_plan'), says: sentenceSchema })
  .meta({ id: 'NoCost', description: 'Why there is nothing to tell of time and money.' });

/** Time and money of a job, or why there is none. */
export const costSchema = z
  .discriminatedUnion('kind', [reportSchema, noCostSchema])
  .meta({ id: 'CostAnswer' });

/** What a change of job or kit makes of time and money, replanned. */
export const costChangeSchema = z
  .object({
    id: z.enum(['second_source', 'larger_electrode', 'wider_tolerance', 'hired_compressor']),
    title: z.string().describe('Name, in words.'),
    says: sentenceSchema.describe('What was changed, or why it could not be tried.'),
    outcome: z
      .enum(['replanned', 'no_plan', 'not_tried'])
      .describe(
        '`replanned`: the figures hold; `no_plan`: nothing can be planned so; `not_tried`: it cannot be tried.',
      ),
    time_s: z.number().nullable().describe('Median time of the whole job with it [s].'),
    time_change_s: z.number().nullable().describe('The same less the median time without it [s].'),
    cost: z.number().nullable().describe("Median money with it, in the job's currency."),
    cost_change: z
      .number()
      .nullable()
      .describe('The same less the median money without it, in the currency of the job.'),
    cost_change_half_width: z
      .number()
      .nullable()
      .describe(
        'What the number of trials can put into `cost_change` at most, half width, in the currency of the job.',
      ),
    setting: z
      .object({
        electrode_diameter_mm: z.number().describe('Diameter of the electrode.'),
        current_A: z.number().describe('Current that is set.'),
        passes: z.number().describe('Passes [-].'),
      })
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

const STEP_TITLES: Readonly<Record<CycleStep, string>> = {
  set_up: 'Set-up',
  commissioning: 'Commissioning',
  starts: 'Starts and layers',
  arc: 'Gouging arc',
  returns: 'Returns of the carriage',
  electrode_changes: 'Electrode changes',
  gauging: 'Gauge stops',
  cooling: 'Cooling waits',
  rework: 'Rework',
  cleaning: 'Cleaning',
  grinding: 'Grinding off the skin',
  inspection: 'Inspection',
  refill: 'Refill welding',
  flush: 'Grinding the cap flush',
};

const PART_TITLES: Readonly<Record<CostPart, string>> = {
  labour: 'Labour and overhead',
  electrodes: 'Electrodes',
  power: 'Power for gouging',
  air: 'Air',
  discs: 'Grinding discs',
  filler: 'Filler',
  gas_and_flux: 'Gas and flux',
  hire: 'Hired plant',
};

const WAY_TITLES: Readonly<Record<OtherWay, string>> = {
  manual_gouging: 'Manual gouging',
  grinding: 'Grinding',
  chipping: 'Chipping',
  machining: 'Machining',
};

/**
 * States time and money of a job as they leave: every number in the unit of its key.
 *
 * @param outcome - time and money in SI [record], from `wholeCost`
 * @returns the report with units in its keys [record]
 * @source none: unit conversion
 * @example
 * const work = arcWorkOfPlan(demoAnswer.basis.plan, demoJob.job, { airFlow: undefined, coolingTime: 60, hirePerDay: 0 });
 * stateCost(wholeCost(demoJob.job, work, { air: false, waits: true })).seam_length_m // => 0.18
 */
export function stateCost(outcome: CostOutcome): CostReport {
  const { cycle, seamLength } = outcome;
  return {
    kind: 'cost',
    currency: outcome.currency,
    seam_length_m: seamLength,
    trials: cycle.trials,
    seed: cycle.seed,
    time_s: stateEstimate(cycle.time),
    cost: stateEstimate(cycle.cost),
    cost_per_m: stateEstimate(cycle.cost, seamLength),
    priced: cycle.partOf.labour.estimate.mean > 0,
    unpriced: COST_PARTS.filter((part) => part !== 'hire' && cycle.partOf[part].estimate.mean === 0),
    reworked: cycle.reworked,
    steps: CYCLE_STEPS.map((step) => ({
      step,
      title: STEP_TITLES[step],
      time_s: stateEstimate(cycle.timeOf[step].estimate),
      time_share: cycle.timeOf[step].share,
      cost: stateEstimate(cycle.costOf[step].estimate),
      cost_share: cycle.costOf[step].share,
    })),
    items: COST_PARTS.map((part) => ({
      part,
      title: PART_TITLES[part],
      cost: stateEstimate(cycle.partOf[part].estimate),
      cost_share: cycle.partOf[part].share,
    })),
    refill: stateRefill(outcome),
    extra: outcome.extra.map((extra) => stateExtra(extra, seamLength)),
    ways: stateWays(outcome),
    assumptions: outcome.assumptions,
    cautions: outcome.cautions,
  };
}

function stateEstimate(from: Estimate, per = 1): CostEstimate {
  return {
    p50: from.p50 / per,
    p90: from.p90 / per,
    mean: from.mean / per,
    p50_half_width: from.p50HalfWidth / per,
    p90_half_width: from.p90HalfWidth / per,
  };
}

function stateRefill({ process, refill, skin }: CostOutcome): RefillReport {
  return {
    process,
    gouged_area_mm2: inUnit(skin.gouged, 'mm2'),
    ground_area_mm2: inUnit(skin.ground, 'mm2'),
    skin_allowance_mm: inUnit(skin.allowance, 'mm'),
    weld_metal_kg: refill.weldMetal,
    skin_weld_metal_kg: skin.addedMetal,
    filler_kg: refill.filler,
    arc_time_s: refill.arcTime,
    time_s: refill.time,
  };
}

function stateExtra(extra: ExtraMetal, seamLength: number): ExtraReport {
  return {
    deeper_mm: inUnit(extra.deeper, 'mm'),
    wider_mm: inUnit(extra.wider, 'mm'),
    weld_metal_kg: extra.weldMetal,
    weld_metal_percent: inUnit(extra.share, 'percent'),
    time_s: extra.time,
    cost: extra.cost,
    cost_per_m: extra.cost / seamLength,
  };
}

function stateWays({ planned, ways, seamLength }: CostOutcome): readonly WayReport[] {
  const stateTaken = (taken: WayTaken | undefined) => ({
    groove_time_s: taken?.grooveTime ?? null,
    time_s: taken?.time ?? null,
    cost: taken?.cost ?? null,
    cost_per_m: taken === undefined ? null : taken.cost / seamLength,
  });
  return [
    {
      way: 'planned',
      title: 'Mechanised gouging as planned',
      rate: 'planned',
      note: 'the plan at its medians, every duration at its usual value',
      source: { text: 'the plan', provenance: 'derived' },
      ...stateTaken(planned),
      planned_cheaper_from_m: null,
    },
    ...ways.map(
      ({ way, rate, note, source, taken, cheaperFrom }): WayReport => ({
        way,
        title: WAY_TITLES[way],
        rate,
        note,
        source,
        ...stateTaken(taken),
        planned_cheaper_from_m: cheaperFrom,
      }),
    ),
  ];
}
