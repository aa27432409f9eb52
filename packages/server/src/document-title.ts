import { JOB_TEXT_MOST } from '@furrow/engine';
import { isMap, isScalar, parseDocument } from 'yaml';

const TITLE_MOST = 120;

/** The title a text gives itself, even one that is no complete job or kit yet; `untitled` if it gives none. */
export function draftTitle(text: string, untitled: string): string {
  if (text.length > JOB_TEXT_MOST) return untitled;
  let title: unknown;
  try {
    const { contents } = parseDocument(text, { uniqueKeys: false });
    const pair = isMap(contents)
      ? contents.items.find(({ key }) => isScalar(key) && key.value === 'title')
      : null;
    title = isScalar(pair?.value) ? pair.value.value : undefined;
  } catch {
    // A text that the reader cannot even recover from has no title; it is saved all the same.
    return untitled;
  }
  return typeof title === 'string' || typeof title === 'number'
    ? shownTitle(String(title), untitled)
    : untitled;
}

/** A title in one line of characters that every database keeps. */
export function shownTitle(title: string, untitled: string): string {
  const line = title.replace(/[\p{Cc}\p{Cs}]+/gu, ' ').trim();
  return line === '' ? untitled : [...line].slice(0, TITLE_MOST).join('');
}
