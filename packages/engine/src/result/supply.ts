import { z } from 'zod';
import { commissionCheckSchema, connectionSchema } from '../commission/index.ts';
import { defaultUsedSchema } from '../document/index.ts';
import { issueSchema } from '../issue/index.ts';
import { limitSchema, type Stated, sourceSchema } from '../limit/index.ts';
import { airReportSchema } from './air.ts';
import { electricSchema } from './electric.ts';
import { placeReportSchema } from './place.ts';

const kitReportSchema = z
  .object({
    title: z.string(),
    revision: z.string().describe('Content hash of the kit as read, defaults included (SHA-256, hex).'),
    defaults_used: z.array(defaultUsedSchema),
  })
  .meta({ id: 'KitReport', description: 'The kit that was used.' });

const supplySettingSchema = z
  .object({
    of: z
      .enum(['plan', 'plan_without_kit'])
      .describe(
        '`plan`: of the plan told; `plan_without_kit`: the kit carries no plan, so this is the one it fails.',
      ),
    electrode_diameter_mm: z.number().describe('Electrode diameter [mm].'),
    current_A: z.number().describe('Current [A].'),
    arc_voltage_V: z.number().describe('Arc voltage [V].'),
    travel_mm_per_min: z.number().describe('Slowest travel of the plan [mm/min].'),
    pass_length_mm: z.number().describe('Length of one pass [mm].'),
    passes: z.number().describe('Passes [-].'),
    pass_time_s: z
      .number()
      .describe('Arc time of the slowest pass, for which the torch blows without a pause [s].'),
  })
  .meta({
    id: 'SupplySetting',
    description: 'The heaviest pass of the plan, or of the plan that the process alone would allow.',
  });

const kitTimeSchema = z
  .object({
    limited_by: z
      .enum(['process', 'kit', 'nothing'])
      .describe(
        "`kit`: without the kit's margins the job would be quicker, or possible at all; `nothing`: no plan either way.",
      ),
    with_kit_s: z
      .number()
      .nullable()
      .describe('Median time of the job within the kit [s]; null where the kit carries no plan.'),
    without_kit_s: z
      .number()
      .nullable()
      .describe('Median time of the job by the process alone [s]; null where there is no plan at all.'),
    binding: z.array(z.string()).describe("Identifiers of the kit's limits that the quicker plan fails."),
    says: z.string().describe('The same in one sentence.'),
  })
  .meta({
    id: 'KitTime',
    description:
      "Whether the kit or the process sets the time: the job planned with and without the kit's margins.",
  });

/** What the kit makes of a plan: margins, loop, air, place, connections and checks. */
export const supplySchema = z
  .object({
    kit: kitReportSchema,
    setting: supplySettingSchema
      .nullable()
      .describe(
        'The setting that everything below is computed for; null where no plan exists even without the kit.',
      ),
    polarity: z
      .object({
        electrode: z.enum(['electrode_positive', 'electrode_negative']),
        source: sourceSchema,
      })
      .nullable()
      .describe('Pole of the electrode and who says so; null without a setting.'),
    time: kitTimeSchema,
    limits: z
      .array(limitSchema)
      .describe(
        "Margins of power, leads and air at the setting; the same entries stand among the plan's limits.",
      ),
    electric: electricSchema.nullable(),
    air: airReportSchema
      .nullable()
      .describe(
        'The air while the torch blows for one pass; null without a setting or where `issues` says why.',
      ),
    place: placeReportSchema
      .nullable()
      .describe('Where things stand in the bay; null where the kit describes no bay or `issues` says why.'),
    connections: z
      .array(connectionSchema)
      .describe('What is connected from where to where; empty where the loop has no working point.'),
    checks: z
      .array(commissionCheckSchema)
      .describe(
        'Checks before the first arc, each with the reading to expect; empty where there is no plan to run.',
      ),
    issues: z.array(issueSchema).describe('Parts of the kit that could not be reckoned with, and why.'),
    cautions: z.array(z.string()).describe('What the numbers do not know of, in words.'),
  })
  .meta({
    id: 'SupplyReport',
    description:
      'What the kit makes of a plan: margins, loop, air, place, connections and checks. Only there where a kit was given.',
  });

/** The kit that was used. */
export type KitReport = Stated<typeof kitReportSchema>;
/** The heaviest pass of the plan, or of the plan that the process alone would allow. */
export type SupplySetting = Stated<typeof supplySettingSchema>;
/** Whether the kit or the process sets the time: the job planned with and without the kit's margins. */
export type KitTime = Stated<typeof kitTimeSchema>;
/** What the kit makes of a plan. */
export type SupplyReport = Stated<typeof supplySchema>;
