import {
  type DocumentField,
  documentFields,
  documentJsonSchema,
  type JsonSchema,
} from '../document/index.ts';
import { kitSchema } from './kit-schema.ts';

/** One field of the kit as a form shows it. */
export type KitField = DocumentField;

/**
 * Every field of the kit document, for forms and for documentation, in the order of the file.
 *
 * @returns the fields [list]
 * @source none: bookkeeping
 * @example
 * kitFields().find((field) => field.path === 'leads.*.size').kind // => "area"
 */
export function kitFields(): readonly KitField[] {
  return documentFields(kitSchema);
}

/**
 * The kit's JSON Schema (draft 2020-12), made from the one schema of the kit.
 *
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * kitJsonSchema()['title'] // => "Furrow kit"
 */
export function kitJsonSchema(): JsonSchema {
  return documentJsonSchema(kitSchema, 'Furrow kit');
}
