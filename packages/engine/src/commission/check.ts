import { z } from 'zod';
import { faultBehindSchema } from '../faults/index.ts';
import type { Stated } from '../limit/index.ts';
import { QUANTITY_KINDS, type QuantityKind, sentenceSchema } from '../quantity/index.ts';

const bandPartSchema = z
  .object({
    what: z.string().describe('What it is, in words.'),
    half_width: z.number().describe('Half width it gives alone, in the unit of the check [see unit].'),
    source: z.string().describe('What it rests on.'),
  })
  .meta({ id: 'BandPart', description: 'One stated uncertainty inside a band.' });

const hintsSchema = z
  .object({
    low: z.string().exactOptional().describe('What a reading below the band points to.'),
    high: z.string().exactOptional().describe('What a reading above the band points to.'),
    unmet: z.string().exactOptional().describe('What it points to where it is not met.'),
  })
  .meta({
    id: 'CheckHints',
    description: 'What to think of beside the causes of the table of faults, in words.',
  });

const factsSchema = z.object({
  id: z.string().describe('Identifier, the same for the same plan and supply.'),
  stage: z
    .enum(['power_off', 'air_on', 'dry_run', 'no_load', 'trial_arc'])
    .describe('When it is made, in this order.'),
  title: z.string().describe('Name, in words.'),
  ask: sentenceSchema.describe('What to do.'),
  caution: z
    .string()
    .nullable()
    .describe("What can hurt, and how not to be; null where nothing beyond the shop's rules."),
  why: sentenceSchema,
  evidence: z
    .string()
    .nullable()
    .describe('Observable of the table of faults that the check answers; null if none.'),
  hints: hintsSchema,
});

const measureSchema = factsSchema
  .extend({
    kind: z.literal('measure'),
    quantity: z.enum(QUANTITY_KINDS as [QuantityKind, ...QuantityKind[]]),
    unit: z.enum(['V', 'mV', 'A', 'kPa', 'mm', 'deg', 's', 'degC']),
    expected: z.number().describe('Reading to expect, in `unit` [see unit].'),
    least: z.number().describe('Lower end of the band, in `unit` [see unit].'),
    most: z.number().describe('Upper end of the band, in `unit` [see unit].'),
    parts: z.array(bandPartSchema),
    below: z
      .array(faultBehindSchema)
      .describe('Causes that explain a reading below the band, the likeliest first.'),
    above: z.array(faultBehindSchema).describe('Causes that explain a reading above it.'),
  })
  .meta({ id: 'MeasureCheck', description: 'A check with a reading to expect and its band.' });

const confirmSchema = factsSchema
  .extend({
    kind: z.literal('confirm'),
    unmet: z.array(faultBehindSchema).describe('Causes that explain it not being met.'),
  })
  .meta({ id: 'ConfirmCheck', description: 'A check that is met or not.' });

/** One check before the first arc. */
export const commissionCheckSchema = z.union([measureSchema, confirmSchema]);

/** What all checks before the first arc have. */
export type CommissionCheckFacts = Stated<typeof factsSchema>;
/** When a check is made. */
export type CommissionStage = CommissionCheckFacts['stage'];
/** What to think of beside the causes of the table of faults, in words. */
export type CheckHints = CommissionCheckFacts['hints'];
/** A check with a reading to expect and its band. */
export type MeasureCheck = Stated<typeof measureSchema>;
/** Units of commissioning readings. */
export type CommissionUnit = MeasureCheck['unit'];
/** One stated uncertainty inside a band. */
export type BandPart = MeasureCheck['parts'][number];
/** A check that is met or not. */
export type ConfirmCheck = Stated<typeof confirmSchema>;
/** One check before the first arc. */
export type CommissionCheck = MeasureCheck | ConfirmCheck;
