import { z } from 'zod';
import type { Stated } from '../limit/index.ts';

const sourceReportSchema = z
  .object({
    name: z.string(),
    current_A: z.number().describe('Current of this source [A].'),
    share_percent: z.number().describe('Its part of the whole current [%].'),
    terminal_voltage_V: z.number().describe('Voltage at its terminals [V].'),
    no_load_voltage_V: z.number().describe('Voltage without load [V].'),
    permissible_minutes: z.number().describe('Minutes in ten that it may carry this current [min].'),
    rated_maximum_A: z.number().describe('Greatest current it is rated for [A].'),
    drops_out: z
      .boolean()
      .describe('The other sources stand above its no-load voltage, so it gives nothing.'),
    input_kW: z
      .number()
      .nullable()
      .describe('Power from the mains [kW]; null where the plate does not tell.'),
    input_kVA: z
      .number()
      .nullable()
      .describe('Apparent power from the mains [kVA]; null where the plate does not tell.'),
    line_current_A: z
      .number()
      .nullable()
      .describe('Current in each mains line [A]; null where the plate does not tell.'),
  })
  .meta({ id: 'SourceReport', description: 'One power source at the setting.' });

const temperatureCurveSchema = z
  .object({ time_s: z.array(z.number()), temperature_C: z.array(z.number()) })
  .meta({
    id: 'TemperatureCurve',
    description: 'Conductor temperature through the duty of the plan; lists of equal length.',
  });

const jointReportSchema = z
  .object({
    name: z.string(),
    resistance_mohm: z.number().describe('Resistance [mohm].'),
    drop_mV: z.number().describe('Volts across it [mV].'),
    heat_W: z.number().describe('Heat it makes [W].'),
    rise_K: z
      .number()
      .nullable()
      .describe(
        'How much hotter than the lead beside it, within a factor of two [K]; null where the lead has no steady state.',
      ),
  })
  .meta({ id: 'JointReport', description: 'One joint of a lead at the setting.' });

const leadReportSchema = z
  .object({
    name: z.string(),
    side: z.enum(['electrode', 'work']),
    source: z
      .string()
      .nullable()
      .describe('The source that alone feeds it; null for a lead of the whole current.'),
    size: z.string().describe('Size, such as `95 mm2` or `4/0 AWG`.'),
    parallels: z.number().describe('Conductors side by side [-].'),
    length_m: z.number().describe('Length of the run [m].'),
    current_A: z.number().describe('Whole current of the run [A].'),
    resistance_mohm: z.number().describe('Resistance of the whole run, joints included [mohm].'),
    drop_V: z.number().describe('Volts along the run, joints included [V].'),
    temperature_C: z.number().describe('Highest conductor temperature in the duty [degC].'),
    steady_C: z
      .number()
      .nullable()
      .describe(
        'Where it would settle under a current that never stops [degC]; null where it would not settle.',
      ),
    steady_says: z.string().nullable().describe('Why it would not settle; null where it would.'),
    insulation_limit_C: z.number().describe('Limit of the insulation [degC].'),
    insulation_limit_provenance: z.enum(['job file', 'memory']),
    time_constant_s: z.number().describe('Time constant [s].'),
    time_to_limit_s: z
      .number()
      .nullable()
      .describe('Until a current that never stops brings it to the limit [s]; null where it never does.'),
    course: temperatureCurveSchema,
    joints: z.array(jointReportSchema),
  })
  .meta({ id: 'LeadReport', description: 'One lead at the setting.' });

const lossReportSchema = z
  .object({
    lead: z.string(),
    joint: z.string().nullable().describe("Name of the joint; null for the lead's own copper."),
    drop_V: z.number().describe('Voltage along it [V].'),
    loss_W: z.number().describe('Heat [W].'),
  })
  .meta({
    id: 'LossReport',
    description: 'One thing between terminals and arc that turns current into heat.',
  });

const senseReportSchema = z
  .object({
    landed: z.string().describe('Where they would be landed, in words.'),
    between: z.array(z.string()).describe('Leads that lie between the wires then.'),
    read_V: z.number().describe('What the wires would read [V].'),
    arc_voltage_V: z.number().describe('What the arc would have [V].'),
    error_V: z.number().describe('Read less true [V].'),
    current_A: z.number().describe('Current then [A].'),
    arc_length_change_mm: z
      .object({
        least: z.number().describe('Least change, with its sign [mm].'),
        most: z.number().describe('Greatest change, with its sign [mm].'),
      })
      .describe(
        "Change of the arc's length by 3 V/mm and by 1 V/mm, a rough figure from memory [mm]; negative is shorter.",
      ),
    depth_change_percent: z
      .number()
      .nullable()
      .describe(
        'Change of the median depth by the removal law, a rough figure [%]; null beyond the limits of process or sources.',
      ),
    says: z.string(),
  })
  .meta({ id: 'SenseReport', description: 'What the sense wires landed in one wrong place would do.' });

const electricPointSchema = z
  .object({
    kind: z.literal('operating_point'),
    current_A: z.number().describe('Current of the arc [A].'),
    arc_voltage_V: z.number().describe('Voltage of the arc [V].'),
    needed_V: z.number().describe('Volts that arc and leads ask for where the sources join [V].'),
    available_V: z.number().describe('Volts that the sources give there at this current [V].'),
    margin_V: z.number().describe('Available less needed [V].'),
    arc_kW: z.number().describe('Power in the arc [kW].'),
    output_kW: z.number().describe('Power at the terminals of all sources [kW].'),
    loss_W: z.number().describe('Heat of leads and joints [W].'),
    input_kVA: z
      .number()
      .nullable()
      .describe('Apparent power of all sources from the mains [kVA]; null where a plate does not tell.'),
    arc_minutes_in_ten: z.number().describe('Minutes of arc in the worst ten [min].'),
    sources: z.array(sourceReportSchema),
    leads: z.array(leadReportSchema),
    losses: z
      .array(lossReportSchema)
      .describe('Everything between terminals and arc that turns current into heat.'),
    sense: z.array(senseReportSchema).describe('What each wrong landing of the sense wires would do.'),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'ElectricPoint', description: 'Sources, leads and arc where they agree.' });

/** The electric loop at a setting; or why it has no working point. */
export const electricSchema = z.union([
  electricPointSchema,
  z.object({ kind: z.literal('no_operating_point'), reason: z.string().describe('Why, in words.') }),
]);

/** The electric loop at a setting; or why it has no working point. */
export type ElectricReport = Stated<typeof electricSchema>;
/** One power source at the setting. */
export type SourceReport = Stated<typeof sourceReportSchema>;
/** Conductor temperature through the duty of the plan; lists of equal length. */
export type TemperatureCurve = Stated<typeof temperatureCurveSchema>;
/** One joint of a lead at the setting. */
export type JointReport = Stated<typeof jointReportSchema>;
/** One lead at the setting. */
export type LeadReport = Stated<typeof leadReportSchema>;
/** What the sense wires landed in one wrong place would do. */
export type SenseReport = Stated<typeof senseReportSchema>;
/** Sources, leads and arc where they agree. */
export type ElectricPoint = Stated<typeof electricPointSchema>;
/** One thing between terminals and arc that turns current into heat. */
export type LossReport = Stated<typeof lossReportSchema>;
