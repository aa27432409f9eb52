import { type Document, isNode, isPair, isScalar, type LineCounter } from 'yaml';
import type { FilePosition } from '../issue/index.ts';
import type { DocumentPath } from './complete.ts';

/** Position of the value at a path, or of the nearest part of the path that stands in the file. */
export function positionOf(
  document: Document,
  lines: LineCounter,
  path: DocumentPath,
): { position?: FilePosition } {
  for (let length = path.length; length >= 0; length -= 1) {
    const offset = offsetAt(document, path.slice(0, length));
    if (offset !== undefined) {
      const { line, col } = lines.linePos(offset);
      return { position: { line, column: col } };
    }
  }
  return {};
}

function offsetAt(document: Document, path: DocumentPath): number | undefined {
  const key = path.at(-1);
  const parent = path.length <= 1 ? document.contents : document.getIn(path.slice(0, -1), true);
  if (typeof key === 'string' && isNode(parent) && 'items' in parent) {
    for (const pair of parent.items) {
      if (isPair(pair) && isScalar(pair.key) && String(pair.key.value) === key) {
        const value = isNode(pair.value) && isScalar(pair.value) ? pair.value.range?.[0] : undefined;
        return value ?? pair.key.range?.[0];
      }
    }
    return undefined;
  }
  const node = path.length === 0 ? document.contents : document.getIn(path, true);
  return isNode(node) ? node.range?.[0] : undefined;
}
