import type { DocumentPath } from '@furrow/engine';
import type { Edit } from './edit.ts';
import type { FieldList } from './field-list.ts';
import { keyedUnit } from './keyed-unit.ts';
import { orderedIndex } from './ordered-index.ts';
import { patternOf } from './path.ts';

type Group = Record<string, unknown>;

/** A change and the fields of the file it is made in. */
interface Change {
  readonly edit: Edit;
  readonly fields: FieldList;
}

/** Whether a file is written in JSON. */
export function isJsonText(text: string): boolean {
  if (!text.trimStart().startsWith('{')) return false;
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** Changes a file written in JSON and keeps it JSON, laid out with two spaces. */
export function editJson(text: string, edit: Edit, fields: FieldList): string {
  const content: unknown = JSON.parse(text);
  return `${JSON.stringify(changed(content, [], edit.path, { edit, fields }), null, 2)}\n`;
}

function changed(node: unknown, above: DocumentPath, path: DocumentPath, change: Change): unknown {
  const { edit } = change;
  const part = path[0];
  if (part === undefined) {
    if (edit.do === 'set') return edit.value;
    return edit.do === 'append' ? [...(Array.isArray(node) ? node : []), edit.entry] : undefined;
  }
  const at = [...above, part];
  if (typeof part === 'number') {
    const list = Array.isArray(node) ? [...node] : [];
    const inner = changed(list[part], at, path.slice(1), change);
    if (inner === undefined) list.splice(part, 1);
    else list[part] = inner;
    return list;
  }
  const group = (typeof node === 'object' && node !== null && !Array.isArray(node) ? node : {}) as Group;
  const inner = changed(group[part], at, path.slice(1), change);
  return withEntry(group, [...above, part], inner, change.fields);
}

function withEntry(group: Group, path: DocumentPath, value: unknown, fields: FieldList): Group {
  const name = String(path.at(-1));
  const field = fields.at(patternOf(path));
  const entries = Object.entries(group);
  const at = entries.findIndex(
    ([key]) => key === name || (field !== undefined && keyedUnit(key, field) !== undefined),
  );
  if (at >= 0)
    entries.splice(at, 1, ...(value === undefined ? [] : ([[name, value]] as [string, unknown][])));
  else if (value !== undefined) {
    const keys = entries.map(([key]) => key);
    entries.splice(orderedIndex(keys, fields.namesIn(patternOf(path.slice(0, -1))), name), 0, [name, value]);
  }
  return Object.fromEntries(entries);
}
