import type { DocumentPath } from '@furrow/engine';

/** Reads a path as issues carry it, `kit.electrodes[0].diameter`, into its parts. */
export function pathOf(text: string): DocumentPath {
  if (text === '') return [];
  return text
    .split('.')
    .flatMap((part) => part.split('['))
    .map((part) => (part.endsWith(']') ? Number(part.slice(0, -1)) : part));
}

/** A field's path with `*` for an index, as the form's list of fields names it. */
export function patternOf(path: DocumentPath): string {
  return path.map((part) => (typeof part === 'number' ? '*' : part)).join('.');
}
