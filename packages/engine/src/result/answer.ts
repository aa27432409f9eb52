import { z } from 'zod';
import { defaultUsedSchema } from '../document/index.ts';
import type { Stated } from '../limit/index.ts';
import type { PlanOutcome } from '../plan/index.ts';
import {
  STATED_UNITS,
  sentenceSchema,
  sentencesWritten,
  type UnitSystem,
  type Written,
} from '../quantity/index.ts';
import { planSchema } from './plan.ts';
import { supplySchema } from './supply.ts';

const inputsSchema = z
  .object({
    revision: z.string().describe('Content hash of the job as read, defaults included.'),
    kit_revision: z
      .string()
      .exactOptional()
      .describe('Content hash of the kit as read; only where a kit was given.'),
    program_version: z.string().describe('Version of the program.'),
    seed: z.int().describe('Seed of all random draws [-].'),
    posterior_id: z.string().describe('Identifier of the removal posterior used.'),
    knowledge: z
      .object({
        id: z.string().describe('The published rows, or what a shop has learned.'),
        trials: z.int().describe('Trials learned from.'),
        jobs: z.int().describe('Gauged jobs learned from.'),
        date: z.string().nullable().describe('Day of the latest of them; null where there are none.'),
        invented: z.literal(true).exactOptional().describe('Made up, to try the program with.'),
      })
      .describe('Which knowledge the result rests on.'),
    defaults_used: z.array(defaultUsedSchema),
  })
  .meta({ id: 'AnswerInputs', description: 'What the result was computed from.' });

const refusalSchema = z
  .object({
    summary: sentenceSchema.describe('One sentence for the person who asked.'),
    binding: z.array(
      z.object({
        constraint: z.string().describe('Identifier of the limit or chance constraint.'),
        demand: z.number().describe('What the best set-up asks for, in `unit` [see unit].'),
        limit: z.number().describe('What there is, in `unit` [see unit].'),
        unit: z.enum(STATED_UNITS),
        remedy: sentenceSchema.describe('The least change that frees it, in words.'),
        frees: z
          .boolean()
          .describe('Whether the job was planned with that change, so that it alone frees it.'),
      }),
    ),
  })
  .meta({ id: 'Refusal', description: 'Why there is no plan: a result, not an error.' });

const adviceSchema = z
  .object({
    topic: z.string().describe('What it is about, in words.'),
    text: z.string().describe('In words.'),
    source: z.string().describe('Document or fact it rests on.'),
    provenance: z.enum(['confirmed', 'memory', 'derived', 'common practice']),
  })
  .meta({ id: 'Advice', description: 'A piece of advice on the metal, with where it comes from.' });

/** The whole result for one job: a plan or a refusal, never both. */
export const answerSchema = z
  .object({
    inputs: inputsSchema,
    plan: planSchema.exactOptional(),
    refusal: refusalSchema.exactOptional(),
    alternatives: z
      .array(planSchema)
      .describe(
        'Other plans, quickest first: those that no plan beats in time, cost and heat at once, and for comparison some that are beaten.',
      ),
    supply: supplySchema
      .exactOptional()
      .describe('What the kit makes of the plan; only where a kit was given.'),
    advice: z
      .array(adviceSchema)
      .describe('What shops do with this metal: polarity and electrode, each with its source.'),
    cautions: z.array(z.string()).describe('Cautions that belong to this job and process, in words.'),
  })
  .meta({ id: 'Answer' });

/** What the result was computed from. */
export type AnswerInputs = Stated<typeof inputsSchema>;
/** A piece of advice on the metal, with where it comes from. */
export type Advice = Stated<typeof adviceSchema>;
/** What the other questions about a job are answered from, in SI with the objects themselves. */
export interface AnswerBasis {
  readonly plan: PlanOutcome;
  /** Free air through the torch at the plan's setting; undefined where no kit tells [m3/s]. */
  readonly torchFlow: number | undefined;
}

/** The whole result for one job: a plan, or a refusal, never both; `basis` stays inside the program. */
export type Answer = Stated<typeof answerSchema> & {
  /** Only where there is a plan; no part of what other programs get. */
  readonly basis?: AnswerBasis;
};

/**
 * An answer as other programs get it: without what stays inside, its sentences written out.
 *
 * @param answer - the answer [record], from `answerJob`
 * @param system - units of the sentences [text], inch or metric
 * @returns plain data of the schema of `furrow plan` [record]
 * @source none: bookkeeping
 * @example
 * writtenAnswer({ basis: { torchFlow: 0.01 }, cautions: ['Hot.'] }, 'metric') // => {"cautions":["Hot."]}
 */
export function writtenAnswer(
  { basis: _, ...answer }: Answer,
  system: UnitSystem,
): Written<Omit<Answer, 'basis'>> {
  return sentencesWritten(answer, system);
}
