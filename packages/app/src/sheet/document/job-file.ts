import { JOB_FIELDS } from './job-fields.ts';
import { type TextFile, textFile } from './text-file.ts';

/** Parses the text of a job file; a file with mistakes is a file too. */
export function jobFile(text: string): TextFile {
  return textFile(text, JOB_FIELDS);
}
