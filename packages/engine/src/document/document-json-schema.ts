import { z } from 'zod';
import { canBeLeftOut } from './complete.ts';
import { fieldFacts } from './field.ts';
import { UNIT_SUFFIXES } from './unit-keys.ts';

/** A JSON Schema, as plain data. */
export type JsonSchema = Record<string, unknown>;

/**
 * The JSON Schema (draft 2020-12) of a document, made from its one schema.
 *
 * @param schema - the schema of the document [record], made of the fields of this room
 * @param title - what the schema is called [text], any
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * const width = amount('length', { least: 0, most: 1 }, { title: 'Width', help: 'How wide.' });
 * documentJsonSchema(z.object({ width }), 'Box').patternProperties // => {"^width_(mm|cm|m|in|ft)$":{"type":"number"}}
 */
export function documentJsonSchema(schema: z.ZodObject, title: string): JsonSchema {
  const made = z.toJSONSchema(schema, {
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema instanceof z.ZodObject) loosen(zodSchema, jsonSchema as JsonSchema);
    },
  });
  return { ...made, title };
}

/** Drops defaults from `required` and lets amounts be keyed by their unit. */
function loosen(zodSchema: z.ZodObject, jsonSchema: JsonSchema): void {
  const fields = zodSchema.shape as Record<string, z.ZodType>;
  const required: string[] = [];
  const eitherOr: JsonSchema[] = [];
  const patterns: Record<string, JsonSchema> = {};
  for (const [name, field] of Object.entries(fields)) {
    const inner = field instanceof z.ZodOptional ? (field.unwrap() as z.ZodType) : field;
    const facts = fieldFacts.get(inner);
    const suffixes = facts?.kind === undefined ? [] : Object.keys(UNIT_SUFFIXES[facts.kind] ?? {});
    if (suffixes.length > 0) patterns[`^${name}_(${suffixes.join('|')})$`] = { type: 'number' };
    const optional =
      field instanceof z.ZodOptional ||
      facts?.fallback !== undefined ||
      (field instanceof z.ZodObject && canBeLeftOut(field));
    if (optional) continue;
    if (suffixes.length === 0) required.push(name);
    else
      eitherOr.push({
        anyOf: [name, ...suffixes.map((unit) => `${name}_${unit}`)].map((key) => ({ required: [key] })),
      });
  }
  if (required.length > 0) jsonSchema['required'] = required;
  else delete jsonSchema['required'];
  if (eitherOr.length > 0) jsonSchema['allOf'] = eitherOr;
  if (Object.keys(patterns).length > 0) jsonSchema['patternProperties'] = patterns;
}
