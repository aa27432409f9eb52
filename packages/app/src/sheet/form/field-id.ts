import { type DocumentPath, pathText } from '@furrow/engine';

/** Id of a field's entry on the page. */
export function fieldId(path: DocumentPath): string {
  return `field-${pathText(path).replace(/[.[\]]+/gu, '-')}`;
}

/** Takes the person to a field, or to the nearest group above it, opening what is folded. */
export function goToField(path: DocumentPath): boolean {
  for (let length = path.length; length > 0; length -= 1) {
    const found = document.getElementById(fieldId(path.slice(0, length)));
    if (found === null) continue;
    for (
      let node = found.closest('details');
      node !== null;
      node = node.parentElement?.closest('details') ?? null
    ) {
      node.open = true;
    }
    found.focus();
    found.scrollIntoView({ block: 'center' });
    return true;
  }
  return false;
}
