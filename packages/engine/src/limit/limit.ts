import { z } from 'zod';
import { STATED_UNITS, sentenceSchema } from '../quantity/index.ts';
import type { Stated } from './stated.ts';

/** Provenance of a statement. */
export const provenanceSchema = z
  .enum(['confirmed', 'memory', 'derived', 'common practice', 'job file'])
  .describe(
    'How far a statement can be trusted: read in a public text, recalled, worked out, a fact of the trade, or given by the shop.',
  );

/** Document or fact that a number rests on, with its provenance. */
export const sourceSchema = z
  .object({
    text: z.string().describe('Document and table or clause, or what the fact rests on.'),
    provenance: provenanceSchema,
  })
  .meta({ id: 'Source', description: 'Where a number or a rule comes from.' });

/** Demand against capacity, with everything needed to show and to explain it. */
export const limitSchema = z
  .object({
    id: z.string().describe('Identifier, such as `removal_power`; the same in every plan.'),
    title: z.string().describe('What is limited, in words.'),
    demand: z.number().describe('What the setting asks for, in `unit` [see unit].'),
    capacity: z.number().describe('What there is, in `unit` [see unit].'),
    unit: z.enum(STATED_UNITS).describe('Unit of demand and capacity.'),
    sense: z
      .enum(['most', 'least'])
      .describe('`most`: demand may not exceed the capacity; `least`: demand may not fall below it.'),
    verdict: z.enum(['holds', 'tight', 'fails']).describe('The verdict in the words shown to people.'),
    hard: z.boolean().describe('A soft limit is shown but never turns a plan away.'),
    source: sourceSchema,
    remedy: sentenceSchema.describe('What to change if it fails, in words.'),
    sensitivity: z
      .array(
        z.object({
          setting: z.string().describe('Name of the setting, such as `travel`.'),
          demand_percent: z
            .number()
            .describe('Change of the demand for a change of one per cent in the setting [%].'),
        }),
      )
      .describe('How the demand answers to one setting each.'),
  })
  .meta({ id: 'Limit', description: 'Demand against capacity, with what is needed to show and explain it.' });

/** How far a statement can be trusted. */
export type Provenance = Stated<typeof provenanceSchema>;
/** Where a number or a rule comes from. */
export type Source = Stated<typeof sourceSchema>;
/** Demand against capacity. */
export type Limit = Stated<typeof limitSchema>;
/** The verdict on one limit. */
export type Verdict = Limit['verdict'];
/** How demand answers to one setting. */
export type Sensitivity = Limit['sensitivity'][number];
