import { z } from 'zod';
import { type Stated, sourceSchema } from '../limit/index.ts';
import { amountOf, inUnit, type Sentence, say, sentenceSchema } from '../quantity/index.ts';
import type {
  AirItem,
  AirOutcome,
  AirPoint,
  Drawdown,
  DutyInterval,
  RestoredPressure,
} from '../supply/index.ts';

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
    changes: z.array(
      z.object({
        out: z.string().describe('What is taken out.'),
        in: z.string().describe('What is put in.'),
      }),
    ),
    receiver_kPa: z
      .number()
      .describe('Pressure in the receiver for which they were sought: its cut-in [kPa gauge].'),
    before_kPa: z.number().describe('Flowing pressure there without any change [kPa gauge].'),
    after_kPa: z.number().describe('Flowing pressure there after the changes [kPa gauge].'),
    says: sentenceSchema.describe('The same in one sentence.'),
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
    cautions: z.array(z.string()).describe('What to look at before this is relied on.'),
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

/** Points of the receiver's course that are stated at most [-]. */
const SAMPLES_MOST = 400;

/**
 * States the air of a plan as it leaves: every number in the unit of its key.
 *
 * @param outcome - the air in SI [record], from `airThroughDuty`
 * @param travel - travel of the passes, by which a moment of the duty is a place on the seam [m/s], > 0
 * @returns the air with units in its keys [record]
 * @source none: unit conversion
 * @example
 * const air = airThroughDuty(airOfKit(demoKit.kit), wantedPressures(demoKit.kit), [{ arc: true, duration: 60 }], []);
 * stateAir(air.value, 0.01).drawdown.passes[0].to_s // => 60
 */
export function stateAir(outcome: AirOutcome, travel: number): AirReport {
  const { point, wanted, drawdown, changes } = outcome;
  return {
    receiver_kPa: inUnit(point.receiver, 'kPa'),
    torch_flow_L_per_min: inUnit(point.torchFlow, 'L_per_min'),
    receiver_flow_L_per_min: inUnit(point.receiverFlow, 'L_per_min'),
    delivered_L_per_min: inUnit(outcome.delivered, 'L_per_min'),
    wanted: {
      regulator_kPa: inUnit(wanted.regulator.value, 'kPa'),
      regulator_source: wanted.regulator.source,
      torch_kPa: inUnit(wanted.torch.value, 'kPa'),
      torch_source: wanted.torch.source,
    },
    regulator_kPa: inUnit(point.regulator, 'kPa'),
    torch_kPa: inUnit(point.torch, 'kPa'),
    points: statePoints(point, outcome.path),
    choked: point.choked,
    regulating: point.regulating ?? null,
    drawdown: stateDrawdown(drawdown, outcome.duty, travel),
    hose_changes: changes && stateChanges(changes),
    cautions: [...drawdown.cautions.map(({ message }) => message), ...quickDraw(drawdown)],
  };
}

function statePoints(point: AirPoint, path: readonly AirItem[]): readonly AirPointReport[] {
  return point.points.map(({ behind, static: still, flowing }, i) => {
    const item = i === 0 ? undefined : path[i - 1];
    const run = item?.kind === 'hose' || item?.kind === 'pipe' ? item : undefined;
    return {
      behind,
      kind: item?.kind ?? 'receiver',
      length_m: run?.length ?? null,
      bore_mm: run === undefined ? null : inUnit(run.bore, 'mm'),
      static_kPa: inUnit(still, 'kPa'),
      flowing_kPa: inUnit(flowing, 'kPa'),
    };
  });
}

/** The course of the receiver over a duty, stated; `travel` tells how far into a pass a moment lies [m/s]. */
export function stateDrawdown(
  drawdown: Drawdown,
  duty: readonly DutyInterval[],
  travel: number,
): DrawdownReport {
  const { samples, below } = drawdown;
  const step = Math.max(1, Math.ceil(samples.length / SAMPLES_MOST));
  // Where torch or compressor starts or stops, and the ends, are kept.
  const kept = samples.filter((sample, i) => {
    const before = samples[i - 1];
    const after = samples[i + 1];
    return (
      i % step === 0 ||
      before === undefined ||
      after === undefined ||
      sample.compressorOn !== after.compressorOn ||
      sample.compressorOn !== before.compressorOn ||
      sample.interval !== after.interval ||
      sample.interval !== before.interval
    );
  });
  const starts = duty.map((_, i) => duty.slice(0, i).reduce((sum, { duration }) => sum + duration, 0));
  const blown = duty.flatMap(({ arc, duration }, i) =>
    arc && duration > 0 ? [{ from: starts[i]!, to: starts[i]! + duration }] : [],
  );
  return {
    time_s: kept.map(({ time }) => time),
    receiver_kPa: kept.map(({ receiver }) => inUnit(receiver, 'kPa')),
    compressor_on: kept.map(({ compressorOn }) => compressorOn),
    passes: blown.map(({ from, to }, i) => ({
      from_s: from,
      to_s: to,
      lowest_kPa: inUnit(drawdown.lowestByPass[i]!, 'kPa'),
    })),
    lowest_kPa: inUnit(drawdown.lowest, 'kPa'),
    lowest_quick_kPa: inUnit(drawdown.lowestQuick, 'kPa'),
    needed_kPa: drawdown.needed === undefined ? null : inUnit(drawdown.needed, 'kPa'),
    below_from_s: below?.time ?? null,
    below_from_pass: below?.pass ?? null,
    below_from_mm: below === undefined ? null : inUnit(below.intoPass * travel, 'mm'),
    compressor_starts: drawdown.compressorStarts,
  };
}

/** Only a quick draw may fail where a slow one holds: a trial tells. */
function quickDraw({ below, belowQuick }: Drawdown): readonly string[] {
  if (below !== undefined || belowQuick === undefined) return [];
  return [
    `The air in the receiver cools when it is drawn quickly, and its pressure then falls up to 1.4 times as fast: in pass ${belowQuick.pass} it may become too low. Watch the receiver’s gauge in a trial of that length.`,
  ];
}

function stateChanges(restored: RestoredPressure): HoseChangesReport {
  const { reached, changes, at } = restored;
  return {
    reached,
    changes,
    at,
    receiver_kPa: inUnit(restored.receiver, 'kPa'),
    before_kPa: inUnit(restored.before, 'kPa'),
    after_kPa: inUnit(restored.after, 'kPa'),
    says: changesSay(restored),
  };
}

function changesSay({ reached, changes, at, before, after, wanted }: RestoredPressure): Sentence {
  const where = at === 'regulator' ? 'behind the regulator' : 'before the torch';
  const short = say`Flowing, ${amountOf(before, 'pressure')} stand ${where} at the receiver’s cut-in; ${amountOf(wanted, 'pressure')} are asked for.`;
  if (changes.length === 0) return say`${short} No hose in stock mends it.`;
  const list = changes.map((change) => `“${change.out}” for “${change.in}”`).join(', ');
  const start = reached ? 'Changing' : 'The best that stock can do, changing';
  return say`${short} ${start} ${list}, gives ${amountOf(after, 'pressure')}.`;
}
