import type { DocumentPath } from '@furrow/engine';
import { isScalar } from 'yaml';
import { isJsonText } from './edit-json.ts';
import { type TextFile, textFile } from './text-file.ts';

/** Replaces a value that stands in the file, in its place; undefined where that cannot be done safely. */
export function spliceScalar(
  file: TextFile,
  path: DocumentPath,
  value: string | number,
): TextFile | undefined {
  const node = file.document.getIn(path, true);
  if (!isScalar(node) || !node.range || node.value === null) return undefined;
  const [start, end] = node.range;
  const expected = withValue(file.document.toJS({ maxAliasCount: 50 }), path, value);
  const quoted = JSON.stringify(value);
  const written = isJsonText(file.text) ? [quoted] : [String(value), quoted];
  for (const text of written) {
    if (text === '' || text.includes('\n')) continue;
    const next = textFile(file.text.slice(0, start) + text + file.text.slice(end), file.fields);
    if (!next.broken && sameContent(next, expected)) return next;
  }
  return undefined;
}

function sameContent(file: TextFile, expected: string): boolean {
  try {
    return JSON.stringify(file.document.toJS({ maxAliasCount: 50 })) === expected;
  } catch {
    return false;
  }
}

function withValue(content: unknown, path: DocumentPath, value: string | number): string {
  const copy = structuredClone(content) as Record<string | number, unknown>;
  let at = copy;
  for (const part of path.slice(0, -1)) at = at[part] as Record<string | number, unknown>;
  at[path.at(-1) ?? ''] = value;
  return JSON.stringify(copy);
}
