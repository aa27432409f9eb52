import { gaugeFields } from '@furrow/engine';
import { type FieldList, fieldListOf } from './field-list.ts';
import { type TextFile, textFile } from './text-file.ts';

let fields: FieldList | undefined;

/** Parses the text of a gauge file; a file with mistakes is a file too. */
export function gaugeFile(text: string): TextFile {
  fields ??= fieldListOf(gaugeFields(), 'furrow_gauge');
  return textFile(text, fields);
}
