import { z } from 'zod';
import { commissionRoundSchema } from '../commission/index.ts';
import type { JsonSchema } from '../document/index.ts';
import { answerSchema } from './answer.ts';
import { costChangeSchema, costSchema } from './cost.ts';
import { gaugeReportSchema } from './gauge.ts';
import { hazardSchema } from './hazard.ts';
import { heatSchema } from './heat.ts';
import { knowledgeReportSchema, nextTrialSchema } from './knowledge.ts';
import { runSchema } from './run.ts';
import { supplySchema } from './supply.ts';
import { surveySchema } from './survey.ts';

const { inputs } = answerSchema.shape;

/** What each command writes with `--json`, by the name of the command; `next-trial` is what `knowledge --next-trial` does. */
export const RESULT_SCHEMAS = {
  plan: answerSchema,
  supply: supplySchema,
  commission: commissionRoundSchema,
  heat: z.object({ inputs, heat: heatSchema }),
  cost: z.object({
    inputs,
    cost: costSchema,
    changes: z.array(costChangeSchema).describe('What changes of job or kit would make of it.'),
  }),
  hazards: z.object({ inputs, hazard: hazardSchema }),
  knowledge: knowledgeReportSchema,
  'next-trial': nextTrialSchema,
  run: runSchema,
  survey: surveySchema,
  gauge: gaugeReportSchema,
} as const;

/** A command whose result has a schema. */
export type ResultName = keyof typeof RESULT_SCHEMAS;

/** All of them. */
export const RESULT_NAMES = Object.keys(RESULT_SCHEMAS) as readonly ResultName[];

/**
 * The JSON Schema (draft 2020-12) of what a command writes with `--json`.
 *
 * @param name - the command [text], one of RESULT_NAMES
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * resultJsonSchema('heat').required // => ["inputs", "heat"]
 */
export function resultJsonSchema(name: ResultName): JsonSchema {
  const made = z.toJSONSchema(RESULT_SCHEMAS[name], { io: 'output', unrepresentable: 'any' });
  return { ...made, title: `Furrow result: ${name}` };
}
