import { z } from 'zod';
import { type Stated, sourceSchema } from '../limit/index.ts';

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
    time_s: z.array(z.number()).describe('Time since the torch was first opened [s].'),
    receiver_kPa: z.array(z.number()).describe('Pressure in the receiver [kPa gauge].'),
    compressor_on: z.array(z.boolean()).describe('Whether the compressor delivers from here on.'),
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
    at: z.enum(['regulator', 'torch']).describe('Where the pressure is wanting.'),
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

/** The air from receiver to torch through all passes of the plan. */
export const airReportSchema = z
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
    points: z.array(airPointReportSchema).describe('Every point from receiver to torch.'),
    choked: z.array(z.string()).describe('Names of what is choked; `torch` is meant to be.'),
    regulating: z
      .string()
      .nullable()
      .describe('Regulator that holds its pressure; null where its supply is too low or there is none.'),
    drawdown: drawdownReportSchema,
    hose_changes: hoseChangesReportSchema
      .nullable()
      .describe(
        'What it takes to restore the pressure at the regulator at the cut-in; null where nothing is wanting.',
      ),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'AirReport', description: 'The air from receiver to torch through all passes of the plan.' });

/** Pressures at one point between receiver and torch. */
export type AirPointReport = Stated<typeof airPointReportSchema>;
/** One pass on the course of the receiver. */
export type PassDrawdownReport = Stated<typeof passDrawdownReportSchema>;
/** How the receiver goes over all passes and the pauses between them; `time_s`, `receiver_kPa` and `compressor_on` are of equal length. */
export type DrawdownReport = Stated<typeof drawdownReportSchema>;
/** The shortest list of hose changes from stock, or the best that stock can do. */
export type HoseChangesReport = Stated<typeof hoseChangesReportSchema>;
/** The air from receiver to torch through all passes of the plan. */
export type AirReport = Stated<typeof airReportSchema>;
