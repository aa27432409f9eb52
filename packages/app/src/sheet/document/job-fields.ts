import { type JobField, jobFields } from '@furrow/engine';
import { fieldListOf } from './field-list.ts';

/** The fields of a job file. */
export const JOB_FIELDS = fieldListOf(jobFields(), 'furrow');

/** Every field of a job, in the order of the file. */
export function fieldList(): readonly JobField[] {
  return JOB_FIELDS.all;
}

/** The field of a job at a path with `*` for an index. */
export function jobFieldAt(pattern: string): JobField | undefined {
  return JOB_FIELDS.at(pattern);
}
