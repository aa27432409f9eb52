import type { HeadingBlock, ListBlock, PaperBlock, ParagraphBlock } from '../blocks/index.ts';

/** What stands under everything that is told. */
export const GOVERNED = 'Local codes and licensed practice govern; the software never signs.';

/** A heading within what is told. */
export function heading(text: string): HeadingBlock {
  return { kind: 'heading', level: 2, text };
}

/** Running text. */
export function paragraph(text: string): ParagraphBlock {
  return { kind: 'paragraph', tone: 'plain', text };
}

/** A list under its heading; nothing where there is nothing to list. */
export function titled(title: string, tone: ListBlock['tone'], items: readonly string[]): PaperBlock[] {
  return items.length === 0 ? [] : [heading(title), { kind: 'list', tone, items }];
}
