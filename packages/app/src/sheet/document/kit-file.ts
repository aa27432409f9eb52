import { kitFields } from '@furrow/engine';
import { type FieldList, fieldListOf } from './field-list.ts';
import { type TextFile, textFile } from './text-file.ts';

let fields: FieldList | undefined;

/** Parses the text of a kit file; a file with mistakes is a file too. */
export function kitFile(text: string): TextFile {
  fields ??= fieldListOf(kitFields(), 'furrow_kit');
  return textFile(text, fields);
}
