import { type JobField, kitFields } from '@furrow/engine';
import { type FieldList, fieldListOf } from './field-list.ts';
import { type TextFile, textFile } from './text-file.ts';

let fields: FieldList | undefined;

/** Parses the text of a kit file; a file with mistakes is a file too. */
export function kitFile(text: string): TextFile {
  return textFile(text, kitFieldList());
}

/** The field of a kit at a path with `*` for an index. */
export function kitFieldAt(pattern: string): JobField | undefined {
  return kitFieldList().at(pattern);
}

function kitFieldList(): FieldList {
  fields ??= fieldListOf(kitFields(), 'furrow_kit');
  return fields;
}
