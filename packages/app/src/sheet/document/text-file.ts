import { type DocumentPath, documentTree, type JobField } from '@furrow/engine';
import { Document, isMap, isScalar, type Pair, type YAMLMap } from 'yaml';
import type { FieldList } from './field-list.ts';
import { keyedUnit } from './keyed-unit.ts';
import { patternOf } from './path.ts';

/** A job or kit file as it stands: its text and the tree read from it. */
export interface TextFile {
  readonly text: string;
  /** The fields such a file can have. */
  readonly fields: FieldList;
  readonly document: Document;
  /** Whether the text has mistakes of syntax, which the form cannot write around. */
  readonly broken: boolean;
}

/** Parses the text of a file that can have these fields; a file with mistakes is a file too, with an empty tree if need be. */
export function textFile(text: string, fields: FieldList): TextFile {
  const tree = documentTree(text);
  if (!tree.ok) return { text, fields, document: new Document(), broken: true };
  const { document, mistakes } = tree.value;
  return { text, fields, document, broken: mistakes.length > 0 };
}

/** What the file has at a field, as a person wrote it; undefined where it has nothing. */
export function writtenAt(file: TextFile, path: DocumentPath): string | undefined {
  const { document } = file;
  const parent = path.length === 1 ? document.contents : document.getIn(path.slice(0, -1), true);
  if (!isMap(parent)) return undefined;
  const field = file.fields.at(patternOf(path));
  const pair = pairOf(parent, String(path.at(-1)), field);
  if (pair === undefined) return undefined;
  const value = isScalar(pair.value) ? pair.value : undefined;
  if (value === undefined || value.value === null || value.value === undefined) return undefined;
  const text = typeof value.value === 'string' ? value.value : (value.source ?? String(value.value));
  const unit = field === undefined ? undefined : keyedUnit(keyText(pair), field);
  return unit === undefined ? text : `${text} ${unit}`;
}

/** How many entries a list of the file has; 0 where it is none. */
export function entriesAt(file: TextFile, path: DocumentPath): number {
  const node = file.document.getIn(path, true);
  return typeof node === 'object' && node !== null && 'items' in node && !isMap(node)
    ? (node.items as unknown[]).length
    : 0;
}

/** The pair that holds a field: under its name, or under its name with a unit. */
export function pairOf(map: YAMLMap, name: string, field: JobField | undefined): Pair | undefined {
  const named = map.items.find((pair) => keyText(pair) === name);
  if (named !== undefined || field === undefined) return named;
  return map.items.find((pair) => keyedUnit(keyText(pair), field) !== undefined && isNumber(pair));
}

function isNumber(pair: Pair): boolean {
  return isScalar(pair.value) && typeof pair.value.value === 'number';
}

/** A pair's key as text; empty for one that is no plain text. */
export function keyText({ key }: Pair): string {
  return isScalar(key) ? String(key.value) : typeof key === 'string' ? key : '';
}
