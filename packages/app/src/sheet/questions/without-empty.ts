import { type Document, isMap, isPair, isScalar, isSeq } from 'yaml';

/** Takes out of a file what was left open, for its reader to ask for. */
export function withoutEmpty(document: Document): void {
  const drop = (node: unknown): void => {
    if (isSeq(node)) node.items.forEach(drop);
    if (!isMap(node)) return;
    for (const pair of [...node.items]) {
      if (!isPair(pair)) continue;
      const { value } = pair;
      if (isScalar(value) && (value.value === undefined || value.value === null || value.value === ''))
        node.delete(pair.key);
      else drop(value);
    }
  };
  drop(document.contents);
}
