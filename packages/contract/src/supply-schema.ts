import { QUANTITY_KINDS, type QuantityKind } from '@furrow/engine';
import { z } from 'zod';
import { issueSchema } from './issue-schema.ts';
import { limitSchema } from './limit-schema.ts';

const defaultUsedSchema = z
  .object({
    path: z.string().describe('Path of the field.'),
    value: z.union([z.string(), z.number()]),
    why: z.string().describe('Why that value.'),
  })
  .meta({ id: 'DefaultUsed', description: 'One default that stood in for a field the file does not have.' });

const kitReportSchema = z
  .object({
    title: z.string(),
    revision: z.string().describe('Content hash of the kit as read, defaults included (SHA-256, hex).'),
    defaults_used: z.array(defaultUsedSchema),
  })
  .meta({ id: 'KitReport', description: 'The kit that was used.' });

const supplySettingSchema = z
  .object({
    of: z.enum(['plan', 'plan_without_kit']),
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
    limited_by: z.enum(['process', 'kit', 'nothing']),
    with_kit_s: z
      .number()
      .nullable()
      .describe('Median time of the job within the kit [s]; null where the kit carries no plan.'),
    without_kit_s: z
      .number()
      .nullable()
      .describe('Median time of the job by the process alone [s]; null where there is no plan at all.'),
    binding: z.array(z.string()),
    says: z.string().describe('The same in one sentence.'),
  })
  .meta({
    id: 'KitTime',
    description:
      "Whether the kit or the process sets the time: the job planned with and without the kit's margins.",
  });

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
    between: z.array(z.string()),
    read_V: z.number().describe('What the wires would read [V].'),
    arc_voltage_V: z.number().describe('What the arc would have [V].'),
    error_V: z.number().describe('Read less true [V].'),
    current_A: z.number().describe('Current then [A].'),
    arc_length_change_mm: z.object({ least: z.number(), most: z.number() }),
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
    losses: z.array(lossReportSchema),
    sense: z.array(senseReportSchema),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'ElectricPoint', description: 'Sources, leads and arc where they agree.' });

const sourceSchema = z
  .object({
    text: z.string().describe('Document and table or clause, or what the fact rests on.'),
    provenance: z.enum(['job file', 'memory', 'confirmed', 'derived', 'common practice']),
  })
  .meta({ id: 'Source', description: 'Where a number or a rule comes from.' });

const airPointReportSchema = z
  .object({
    behind: z
      .string()
      .describe(
        "Name of the item behind which the point lies; `receiver` for the start; the last is the torch's inlet.",
      ),
    kind: z.enum(['receiver', 'hose', 'pipe', 'component', 'regulator', 'draw', 'parallel']),
    length_m: z.number().nullable().describe('Length of the item, for hoses and pipes [m]; null for others.'),
    bore_mm: z.number().nullable().describe('Bore of the item, for hoses and pipes [mm]; null for others.'),
    static_kPa: z.number().describe('Pressure without flow [kPa gauge].'),
    flowing_kPa: z.number().describe('Pressure while the torch blows [kPa gauge].'),
  })
  .meta({ id: 'AirPointReport', description: 'Pressures at one point between receiver and torch.' });

const passDrawdownReportSchema = z
  .object({
    from_s: z.number().describe('When the torch opens, since it was first opened [s].'),
    to_s: z.number().describe('When it shuts [s].'),
    lowest_kPa: z.number().describe('Lowest pressure in the receiver in this pass [kPa gauge].'),
  })
  .meta({ id: 'PassDrawdownReport', description: 'One pass on the course of the receiver.' });

const drawdownReportSchema = z
  .object({
    time_s: z.array(z.number()),
    receiver_kPa: z.array(z.number()),
    compressor_on: z.array(z.boolean()),
    passes: z.array(passDrawdownReportSchema),
    lowest_kPa: z.number().describe('Lowest pressure in the receiver while the torch blows [kPa gauge].'),
    lowest_quick_kPa: z
      .number()
      .describe(
        'The same where the draw is so quick that the air cools: the lower end of what is to be expected [kPa gauge].',
      ),
    needed_kPa: z
      .number()
      .nullable()
      .describe(
        'Pressure in the receiver below which the wanted pressure is not met [kPa gauge]; null where none meets it.',
      ),
    below_from_s: z
      .number()
      .nullable()
      .describe('Time from which the flowing pressure is too low [s]; null where that does not happen.'),
    below_from_pass: z
      .number()
      .nullable()
      .describe('Pass in which that is, from 1 [-]; null where that does not happen.'),
    below_from_mm: z
      .number()
      .nullable()
      .describe('Length along that pass from which it is too low [mm]; null where that does not happen.'),
    compressor_starts: z.number().describe('How often the compressor starts to deliver [-].'),
  })
  .meta({
    id: 'DrawdownReport',
    description:
      'How the receiver goes over all passes and the pauses between them; `time_s`, `receiver_kPa` and `compressor_on` are of equal length.',
  });

const hoseChangesReportSchema = z
  .object({
    reached: z.boolean().describe('Whether the changes restore the wanted flowing pressure.'),
    at: z.enum(['regulator', 'torch']),
    changes: z.array(z.object({ out: z.string(), in: z.string() })),
    receiver_kPa: z
      .number()
      .describe('Pressure in the receiver for which they were sought: its cut-in [kPa gauge].'),
    before_kPa: z.number().describe('Flowing pressure there without any change [kPa gauge].'),
    after_kPa: z.number().describe('Flowing pressure there after the changes [kPa gauge].'),
    says: z.string().describe('The same in one sentence.'),
  })
  .meta({
    id: 'HoseChangesReport',
    description: 'The shortest list of hose changes from stock, or the best that stock can do.',
  });

const airReportSchema = z
  .object({
    receiver_kPa: z
      .number()
      .describe(
        'Pressure in the receiver for which the points are given, the lowest while the torch blows [kPa gauge].',
      ),
    torch_flow_L_per_min: z.number().describe('Free air through the torch (20 degC, 1 bar, dry) [L/min].'),
    receiver_flow_L_per_min: z
      .number()
      .describe('Free air out of the receiver, other users included [L/min].'),
    delivered_L_per_min: z.number().describe('Free air that the compressor delivers at its cut-in [L/min].'),
    wanted: z.object({
      regulator_kPa: z.number().describe('Behind the regulator [kPa gauge].'),
      regulator_source: sourceSchema,
      torch_kPa: z.number().describe('Before the torch [kPa gauge].'),
      torch_source: sourceSchema,
    }),
    regulator_kPa: z
      .number()
      .describe(
        'Flowing pressure behind the regulator, or before the torch where there is none [kPa gauge].',
      ),
    torch_kPa: z.number().describe('Flowing pressure before the torch [kPa gauge].'),
    points: z.array(airPointReportSchema),
    choked: z.array(z.string()),
    regulating: z
      .string()
      .nullable()
      .describe('Regulator that holds its pressure; null where its supply is too low or there is none.'),
    drawdown: drawdownReportSchema,
    hose_changes: hoseChangesReportSchema.nullable(),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'AirReport', description: 'The air from receiver to torch through all passes of the plan.' });

const pointReportSchema = z
  .object({ x_m: z.number().describe('To the right [m].'), y_m: z.number().describe('Up the plan [m].') })
  .meta({ id: 'PointReport', description: 'A point of the plan view.' });

const areaReportSchema = z
  .object({ name: z.string(), outline_m: z.array(pointReportSchema) })
  .meta({ id: 'AreaReport', description: 'A closed area of the plan view.' });

const bayReportSchema = z
  .object({
    outline_m: z.array(pointReportSchema),
    obstacles: z.array(areaReportSchema),
    walkways: z.array(areaReportSchema),
    workpiece: areaReportSchema,
    seam_m: z.array(pointReportSchema),
    posts: z.array(
      z.object({ name: z.string(), kind: z.enum(['power', 'air', 'work clamp']), at_m: pointReportSchema }),
    ),
    keep_out_m: z.number().describe('Distance that the station keeps from the seam [m].'),
  })
  .meta({ id: 'BayReport', description: 'What stands in the bay.' });

const routeReportSchema = z
  .object({
    name: z.string(),
    kind: z.enum(['electrode lead', 'work lead', 'air hose']),
    from: z.string(),
    to: z.string(),
    path_m: z.array(pointReportSchema),
    needed_m: z.number().describe('Length needed, slack included [m].'),
    picked_m: z.number().describe('Length of what is picked for it [m].'),
    pieces: z.array(z.string()),
    joints: z.number().describe('Joints between the pieces one behind the other [-].'),
    cleats: z.number().describe('Cleats along the way [-].'),
    loss_W: z.number().describe('Power lost in it at the setting [W].'),
  })
  .meta({ id: 'RouteReport', description: 'One lead or hose as it is laid.' });

const pickReportSchema = z
  .object({
    name: z.string(),
    kind: z.enum(['hose', 'lead']),
    size: z.string().describe('Size of a lead, such as `95 mm2`; bore of a hose, such as `19 mm`.'),
    length_m: z.number().describe('Length of one [m].'),
    count: z.number().describe('How many [-].'),
  })
  .meta({ id: 'PickReport', description: 'Pieces of one kind in stock.' });

const placeReportSchema = z
  .object({
    bay: bayReportSchema,
    station: z
      .object({
        at_m: pointReportSchema,
        chosen: z.enum(['found', 'stated']),
        places_tried: z.number().describe('Places on the grid [-].'),
        places_judged: z.number().describe('Places judged one by one; a bound rules the others out [-].'),
        loss_W: z.number().describe('Power lost in the picked leads and hoses at the setting [W].'),
        reach_margin_m: z
          .number()
          .describe(
            'How much farther than every point of the seam the shorter of lead and hose would reach [m].',
          ),
      })
      .nullable(),
    least: z
      .object({ at_m: pointReportSchema, loss_W: z.number().describe('Power lost there [W].') })
      .nullable(),
    routes: z.array(routeReportSchema),
    picks: z.array(pickReportSchema),
    left: z.array(pickReportSchema),
    covers: z.number().describe('Covers that the walkways need [-].'),
    lead_clearance_m: z
      .number()
      .describe(
        'Distance that leads and hoses keep from the seam, but where they come to it at right angles [m].',
      ),
    jets_m: z
      .array(z.array(pointReportSchema))
      .describe(
        'Where the jet throws: one outline for each stretch and way, out of bounds for station and people [m].',
      ),
    cautions: z
      .array(z.string())
      .describe('What stands or lies where the jet throws, or beside the seam, in words.'),
    parallels: z.number().describe('Leads side by side in every run of leads, as in the leads laid now [-].'),
    says: z.string(),
  })
  .meta({
    id: 'PlaceReport',
    description:
      "Where everything stands in the bay, in metres from the bay's own origin, x to the right and y up the plan.",
  });

const connectionSchema = z
  .object({
    number: z.number().describe('Order in which it is made, from 1 [-].'),
    kind: z.enum(['air', 'lead', 'joint', 'sense_wire']),
    name: z.string(),
    from: z.string(),
    to: z.string(),
    size: z
      .string()
      .nullable()
      .describe('Size as the kit writes it, or the bore of a hose; null for a joint.'),
    parallels: z
      .number()
      .nullable()
      .describe('Leads side by side; null where there is only the one piece [-].'),
    length_mm: z.number().nullable().describe('Length of each [mm].'),
    polarity: z.enum(['positive', 'negative']).nullable(),
    voltage_V: z
      .number()
      .nullable()
      .describe('Volts across it at the set current; null where no work current flows [V].'),
    tightness: z.string().describe('How to tell that it is tight.'),
  })
  .meta({ id: 'Connection', description: 'One row of the connection schedule.' });

const bandPartSchema = z
  .object({
    what: z.string(),
    half_width: z.number().describe('Half width it gives alone, in the unit of the check [see unit].'),
    source: z.string(),
  })
  .meta({ id: 'BandPart', description: 'One stated uncertainty inside a band.' });

const faultBehindSchema = z
  .object({ cause: z.string().describe('Identifier of the cause.'), title: z.string(), remedy: z.string() })
  .meta({ id: 'FaultBehind', description: 'A cause that explains an outcome.' });

const checkHintsSchema = z
  .object({
    low: z.string().exactOptional(),
    high: z.string().exactOptional(),
    unmet: z.string().exactOptional(),
  })
  .meta({
    id: 'CheckHints',
    description: 'What to think of beside the causes of the table of faults, in words.',
  });

const measureCheckSchema = z
  .object({
    kind: z.literal('measure'),
    quantity: z.enum(QUANTITY_KINDS as [QuantityKind, ...QuantityKind[]]),
    unit: z.enum(['V', 'mV', 'A', 'kPa', 'mm', 'deg', 's', 'degC']),
    expected: z.number().describe('Reading to expect, in `unit` [see unit].'),
    least: z.number().describe('Lower end of the band, in `unit` [see unit].'),
    most: z.number().describe('Upper end of the band, in `unit` [see unit].'),
    parts: z.array(bandPartSchema),
    below: z.array(faultBehindSchema),
    above: z.array(faultBehindSchema),
    id: z.string().describe('Identifier, the same for the same plan and supply.'),
    stage: z.enum(['power_off', 'air_on', 'dry_run', 'no_load', 'trial_arc']),
    title: z.string(),
    ask: z.string().describe('What to do.'),
    caution: z
      .string()
      .nullable()
      .describe("What can hurt, and how not to be; null where nothing beyond the shop's rules."),
    why: z.string(),
    evidence: z
      .string()
      .nullable()
      .describe('Observable of the table of faults that the check answers; null if none.'),
    hints: checkHintsSchema,
  })
  .meta({ id: 'MeasureCheck', description: 'A check with a reading to expect and its band.' });

const confirmCheckSchema = z
  .object({
    kind: z.literal('confirm'),
    unmet: z.array(faultBehindSchema),
    id: z.string().describe('Identifier, the same for the same plan and supply.'),
    stage: z.enum(['power_off', 'air_on', 'dry_run', 'no_load', 'trial_arc']),
    title: z.string(),
    ask: z.string().describe('What to do.'),
    caution: z
      .string()
      .nullable()
      .describe("What can hurt, and how not to be; null where nothing beyond the shop's rules."),
    why: z.string(),
    evidence: z
      .string()
      .nullable()
      .describe('Observable of the table of faults that the check answers; null if none.'),
    hints: checkHintsSchema,
  })
  .meta({ id: 'ConfirmCheck', description: 'A check that is met or not.' });

/** What the kit makes of a plan: margins, loop, air, place, connections and checks. */
export const supplySchema = z
  .object({
    kit: kitReportSchema,
    setting: supplySettingSchema.nullable(),
    polarity: z
      .object({
        electrode: z.enum(['electrode_positive', 'electrode_negative']),
        source: sourceSchema,
      })
      .nullable()
      .describe('Pole of the electrode and who says so; null without a setting.'),
    time: kitTimeSchema,
    limits: z.array(limitSchema),
    electric: z
      .union([electricPointSchema, z.object({ kind: z.literal('no_operating_point'), reason: z.string() })])
      .nullable(),
    air: airReportSchema.nullable(),
    place: placeReportSchema.nullable(),
    connections: z.array(connectionSchema),
    checks: z.array(z.union([measureCheckSchema, confirmCheckSchema])),
    issues: z.array(issueSchema),
    cautions: z.array(z.string()),
  })
  .meta({
    id: 'SupplyReport',
    description:
      'What the kit makes of a plan: margins, loop, air, place, connections and checks. Only there where a kit was given.',
  });
