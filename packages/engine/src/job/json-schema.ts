import { documentJsonSchema, type JsonSchema } from '../document/index.ts';
import { jobSchema } from './schema.ts';

/**
 * The job's JSON Schema (draft 2020-12), made from the one schema of the job.
 *
 * Fields with a default are not required; an amount may be written with its unit, or as a number
 * under a key that carries the unit.
 *
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * jobJsonSchema()['$schema'] // => "https://json-schema.org/draft/2020-12/schema"
 */
export function jobJsonSchema(): JsonSchema {
  return documentJsonSchema(jobSchema, 'Furrow job');
}
