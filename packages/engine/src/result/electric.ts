import { z } from 'zod';
import type { Stated } from '../limit/index.ts';
import { inUnit } from '../quantity/index.ts';
import {
  type Characteristic,
  type ElectricLoop,
  type Lead,
  type LeadState,
  type NoWorkingLoop,
  type SenseLanding,
  type SourceState,
  sourceVoltage,
  type WorkingLoop,
} from '../supply/index.ts';

const sourceReportSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
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
  .object({
    time_s: z.array(z.number()).describe('Times.'),
    temperature_C: z.array(z.number()).describe('Temperatures, one for each time.'),
  })
  .meta({
    id: 'TemperatureCurve',
    description: 'Conductor temperature through the duty of the plan; lists of equal length.',
  });

const jointReportSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
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
    name: z.string().describe('Name, in words.'),
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
    lead: z.string().describe('Name of the lead.'),
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
    says: z.string().describe('In words.'),
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
    cautions: z.array(z.string()).describe('What to look at before this is relied on.'),
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

/** Points of a temperature curve that are stated at most [-]. */
const POINTS_MOST = 240;

/**
 * States the electric loop as it leaves: every number in the unit of its key.
 *
 * @param loop - the loop [record], as it was solved
 * @param solved - what solving it gave [record], from `solveLoop`
 * @param landings - what wrong landings of the sense wires would do [list], from `senseLandings`
 * @returns the loop with units in its keys, or why it has no working point [record]
 * @source none: unit conversion
 * @example
 * stateElectric({}, { kind: 'no_operating_point', reason: 'Too long a lead.' }, []).reason // => "Too long a lead."
 */
export function stateElectric(
  loop: ElectricLoop,
  solved: WorkingLoop | NoWorkingLoop,
  landings: readonly SenseLanding[],
): ElectricReport {
  return solved.kind === 'no_operating_point' ? solved : statePoint(loop, solved, landings);
}

function statePoint(
  loop: ElectricLoop,
  solved: WorkingLoop,
  landings: readonly SenseLanding[],
): ElectricPoint {
  const laid = new Map(
    [...loop.sources.flatMap(({ leads = [] }) => leads), ...loop.leads].map((lead) => [lead.name, lead]),
  );
  const inputs = solved.sources.map(({ input }) => input?.apparent_VA);
  return {
    kind: 'operating_point',
    current_A: solved.current_A,
    arc_voltage_V: solved.arc_voltage_V,
    needed_V: solved.needed_V,
    available_V: solved.available_V,
    margin_V: solved.margin_V,
    arc_kW: inUnit(solved.arc_W, 'kW'),
    output_kW: inUnit(solved.output_W, 'kW'),
    loss_W: solved.loss_W,
    input_kVA: inputs.every((apparent) => apparent !== undefined)
      ? inUnit(
          inputs.reduce((sum, apparent) => sum + apparent, 0),
          'kVA',
        )
      : null,
    arc_minutes_in_ten: solved.arc_minutes_in_ten,
    sources: solved.sources.map((state, i) => stateSource(state, loop.sources[i]!.source.characteristic)),
    leads: solved.leads.map((state) => stateLead(state, laid.get(state.name)!)),
    losses: solved.losses.map(({ lead, joint, drop_V, loss_W }) => ({
      lead,
      joint: joint ?? null,
      drop_V,
      loss_W,
    })),
    sense: landings.map(stateSense),
    cautions: solved.cautions,
  };
}

function stateSource(state: SourceState, characteristic: Characteristic): SourceReport {
  const { input } = state;
  return {
    name: state.name,
    current_A: state.current_A,
    share_percent: inUnit(state.share, 'percent'),
    terminal_voltage_V: state.terminal_voltage_V,
    no_load_voltage_V: sourceVoltage(characteristic, 0),
    permissible_minutes: state.permissible_minutes,
    rated_maximum_A: state.rated_maximum_A,
    drops_out: state.drops_out,
    input_kW: input === undefined ? null : inUnit(input.power_W, 'kW'),
    input_kVA: input?.apparent_VA === undefined ? null : inUnit(input.apparent_VA, 'kVA'),
    line_current_A: input?.line_current_A ?? null,
  };
}

function stateLead(state: LeadState, lead: Lead): LeadReport {
  const { steady, duty } = state;
  return {
    name: state.name,
    side: state.side,
    source: state.source ?? null,
    size: state.size,
    parallels: state.parallels,
    length_m: lead.length,
    current_A: state.current_A,
    resistance_mohm: inUnit(state.resistance_ohm, 'mohm'),
    drop_V: state.drop_V,
    temperature_C: inUnit(duty?.peak_K ?? state.temperature_K, 'degC'),
    steady_C: steady.kind === 'steady' ? inUnit(steady.temperature_K, 'degC') : null,
    steady_says: steady.kind === 'steady' ? null : steady.reason,
    insulation_limit_C: inUnit(state.insulation_limit_K, 'degC'),
    insulation_limit_provenance: state.insulation_limit_provenance,
    time_constant_s: state.time_constant_s,
    time_to_limit_s: state.time_to_limit_s ?? null,
    course: curveOf(duty?.history ?? []),
    joints: state.joints.map(
      ({ name, drop_V, heat_W, rise_K }, i): JointReport => ({
        name,
        resistance_mohm: inUnit(lead.joints?.[i]?.resistance ?? 0, 'mohm'),
        drop_mV: inUnit(drop_V, 'mV'),
        heat_W,
        rise_K: rise_K ?? null,
      }),
    ),
  };
}

/** The course with as many points as a drawing can show, its ends and its highest point among them. */
function curveOf(
  history: readonly { readonly time_s: number; readonly temperature_K: number }[],
): TemperatureCurve {
  const step = Math.max(1, Math.ceil(history.length / POINTS_MOST));
  const highest = history.reduce(
    (best, point, i) => (point.temperature_K > history[best]!.temperature_K ? i : best),
    0,
  );
  const kept = history.filter((_, i) => i % step === 0 || i === highest || i === history.length - 1);
  return {
    time_s: kept.map(({ time_s }) => time_s),
    temperature_C: kept.map(({ temperature_K }) => inUnit(temperature_K, 'degC')),
  };
}

function stateSense(landing: SenseLanding): SenseReport {
  const { arcLengthChange, depthChange } = landing;
  return {
    landed: landing.landed,
    between: landing.between,
    read_V: landing.read,
    arc_voltage_V: landing.arcVoltage,
    error_V: landing.error,
    current_A: landing.current,
    arc_length_change_mm: {
      least: inUnit(arcLengthChange.least, 'mm'),
      most: inUnit(arcLengthChange.most, 'mm'),
    },
    depth_change_percent: depthChange === null ? null : inUnit(depthChange, 'percent'),
    says: landing.says,
  };
}
