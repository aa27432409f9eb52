import { MISSING_SIGN, type Typefaces, type Weight } from './typefaces.ts';

/** Direction of a piece of text; neutral ones take that of their neighbours. */
export type Direction = 'ltr' | 'rtl' | 'neutral';

/** A piece of one word in one typeface and direction, or a space. */
export interface TextItem {
  readonly text: string;
  readonly face: string;
  readonly direction: Direction;
  readonly space: boolean;
}

/** Spaces at which a line may be broken: not those that bind a unit to its number. */
export const BREAKS = /[^\S\u00a0\u202f]+/u;

const RTL = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;
/** Signs that bind, once lines are broken they are spaces like any other. */
const BOUND = /[\u00a0\u202f]/gu;

const LETTER = /\p{L}/u;
const IGNORABLE = /[\p{Default_Ignorable_Code_Point}\p{Cc}\p{Cs}]/gu;
const clusters = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Direction of a piece of text by its letters. */
export function directionOf(text: string): Direction {
  if (RTL.test(text)) return 'rtl';
  return LETTER.test(text) ? 'ltr' : 'neutral';
}

/** Direction of a whole text: that of its first letter. */
export function baseDirection(text: string): 'ltr' | 'rtl' {
  for (const sign of text) {
    const direction = directionOf(sign);
    if (direction !== 'neutral') return direction;
  }
  return 'ltr';
}

/** Splits a text into words, and words where typeface or direction changes; signs no typeface has become boxes. */
export function textItems(text: string, weight: Weight, faces: Typefaces): TextItem[] {
  const items: TextItem[] = [];
  const words = text.split(BREAKS).filter((word) => word !== '');
  words.forEach((word, index) => {
    if (index > 0)
      items.push({ text: ' ', face: faces.faceOf(' ', weight)!, direction: 'neutral', space: true });
    items.push(...wordItems(word.replace(BOUND, ' '), weight, faces));
  });
  return items;
}

function wordItems(word: string, weight: Weight, faces: Typefaces): TextItem[] {
  const items: TextItem[] = [];
  for (const { segment } of clusters.segment(word)) {
    const visible = segment.replace(IGNORABLE, '');
    if (visible === '') continue;
    const known = faces.faceOf(visible, weight);
    const sign = known === undefined ? MISSING_SIGN : visible;
    const face = known ?? faces.faceOf(MISSING_SIGN, weight)!;
    const direction = directionOf(sign);
    const last = items.at(-1);
    if (last !== undefined && last.face === face && joins(last.direction, direction)) {
      const joined = last.direction === 'neutral' ? direction : last.direction;
      items[items.length - 1] = { ...last, text: last.text + sign, direction: joined };
    } else {
      items.push({ text: sign, face, direction, space: false });
    }
  }
  return items;
}

function joins(before: Direction, after: Direction): boolean {
  // digits and brackets beside right-to-left letters stay pieces of their own, so that their order is kept
  if (before === 'rtl' || after === 'rtl') return before === after;
  return true;
}
