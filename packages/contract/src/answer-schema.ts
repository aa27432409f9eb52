import { planSchema, STATED_UNITS } from '@furrow/engine';
import { z } from 'zod';
import { supplySchema } from './supply-schema.ts';

const inputsSchema = z
  .object({
    revision: z.string().describe('Content hash of the job as read, defaults included.'),
    kit_revision: z
      .string()
      .exactOptional()
      .describe('Content hash of the kit as read; only where a kit was given.'),
    program_version: z.string(),
    seed: z.int(),
    posterior_id: z.string(),
    knowledge: z
      .object({
        id: z.string().describe('The published rows, or what a shop has learned.'),
        trials: z.int().describe('Trials learned from.'),
        jobs: z.int().describe('Gauged jobs learned from.'),
        date: z.string().nullable().describe('Day of the latest of them; null where there are none.'),
      })
      .describe('Which knowledge the result rests on.'),
    defaults_used: z.array(
      z.object({ path: z.string(), value: z.union([z.string(), z.number()]), why: z.string() }),
    ),
  })
  .meta({ id: 'AnswerInputs', description: 'What the result was computed from.' });

const refusalSchema = z
  .object({
    summary: z.string(),
    binding: z.array(
      z.object({
        constraint: z.string(),
        demand: z.number(),
        limit: z.number(),
        unit: z.enum(STATED_UNITS),
        remedy: z.string(),
      }),
    ),
  })
  .meta({ id: 'Refusal', description: 'Why there is no plan: a result, not an error.' });

/** The whole result for one job: a plan or a refusal, never both. */
export const answerSchema = z
  .object({
    inputs: inputsSchema,
    plan: planSchema.exactOptional(),
    refusal: refusalSchema.exactOptional(),
    alternatives: z.array(planSchema),
    supply: supplySchema.exactOptional(),
    advice: z.array(
      z.object({
        topic: z.string(),
        text: z.string(),
        source: z.string(),
        provenance: z.enum(['confirmed', 'memory', 'derived', 'common practice']),
      }),
    ),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'Answer' });
