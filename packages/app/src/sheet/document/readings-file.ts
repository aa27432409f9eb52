import { readingsFields } from '@furrow/engine';
import { type FieldList, fieldListOf } from './field-list.ts';
import { type TextFile, textFile } from './text-file.ts';

let fields: FieldList | undefined;

/** Parses the text of a readings file; a file with mistakes is a file too. */
export function readingsFile(text: string): TextFile {
  fields ??= fieldListOf(readingsFields(), 'furrow_readings');
  return textFile(text, fields);
}
