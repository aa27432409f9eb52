import { type DocumentField, documentFields } from '../document/index.ts';
import { jobSchema } from './schema.ts';

/** One field of the job as a form shows it. */
export type JobField = DocumentField;

/**
 * Every field of the job document, for forms and for documentation, in the order of the file.
 *
 * @returns the fields [list]
 * @source none: bookkeeping
 * @example
 * jobFields().find((field) => field.path === 'plate.thickness').title // => "Thickness"
 */
export function jobFields(): readonly JobField[] {
  return documentFields(jobSchema);
}
