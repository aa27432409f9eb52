import { documentJsonSchema, type JsonSchema } from '../../document/index.ts';
import { readingsSchema } from './readings-schema.ts';

/**
 * The JSON Schema (draft 2020-12) of a readings file, made from its one schema.
 *
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * readingsJsonSchema()['title'] // => "Furrow readings"
 */
export function readingsJsonSchema(): JsonSchema {
  return documentJsonSchema(readingsSchema, 'Furrow readings');
}
