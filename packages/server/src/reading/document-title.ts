import { topField } from '@furrow/engine';

const TITLE_MOST = 120;

/** The title a text gives itself, even one that is no complete job or kit yet; `untitled` if it gives none. */
export function draftTitle(text: string, untitled: string): string {
  return shownTitle(topField(text, 'title') ?? '', untitled);
}

/** A title in one line of characters that every database keeps. */
export function shownTitle(title: string, untitled: string): string {
  const line = title.replace(/[\p{Cc}\p{Cs}]+/gu, ' ').trim();
  return line === '' ? untitled : [...line].slice(0, TITLE_MOST).join('');
}
