import { type DocumentField, documentFields } from '../../document/index.ts';
import { readingsSchema } from './readings-schema.ts';

/**
 * Every field of the readings file, for forms and for documentation, in the order of the file.
 *
 * @returns the fields [list]
 * @source none: bookkeeping
 * @example
 * readingsFields().find((field) => field.path === 'stations.*.depth').kind // => "length"
 */
export function readingsFields(): readonly DocumentField[] {
  return documentFields(readingsSchema);
}
