import { boundUnits } from '../words/index.ts';
import { baseDirection, type TextItem, textItems } from './text-items.ts';
import type { Typefaces, Weight } from './typefaces.ts';
import { visualOrder } from './visual-order.ts';

/** A piece of a line, painted at once. */
export interface LinePiece {
  readonly text: string;
  readonly face: string;
  /** Distance from the line's left end [pt]. */
  readonly x: number;
}

/** One line of laid-out text. */
export interface TextLine {
  readonly pieces: readonly LinePiece[];
  /** Width [pt]. */
  readonly width: number;
}

const clusters = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Breaks a text into lines of at most this width; a word wider than the line is broken too. */
export function textLines(
  text: string,
  weight: Weight,
  size: number,
  width: number,
  faces: Typefaces,
): TextLine[] {
  const base = baseDirection(text);
  const lines: TextItem[][] = [];
  let line: TextItem[] = [];
  let used = 0;
  const finish = (): void => {
    if (line.length > 0) lines.push(line);
    line = [];
    used = 0;
  };
  for (const word of wordsOf(textItems(boundUnits(text), weight, faces))) {
    const space = line.length === 0 ? 0 : widthOf([word.space], size, faces);
    const needed = widthOf(word.items, size, faces);
    if (line.length > 0 && used + space + needed > width) finish();
    for (const part of needed > width ? brokenWord(word.items, size, width, faces) : [word.items]) {
      const partWidth = widthOf(part, size, faces);
      if (line.length > 0 && used + space + partWidth > width) finish();
      if (line.length > 0 && part[0] === word.items[0]) {
        line.push(word.space);
        used += space;
      }
      line.push(...part);
      used += partWidth;
    }
  }
  finish();
  return lines.map((items) => placedLine(items, base, size, faces));
}

interface Word {
  readonly items: readonly TextItem[];
  /** The space before it. */
  readonly space: TextItem;
}

function wordsOf(items: readonly TextItem[]): Word[] {
  const words: Word[] = [];
  let current: TextItem[] = [];
  let space: TextItem | undefined;
  for (const item of items) {
    if (!item.space) {
      current.push(item);
      continue;
    }
    if (current.length > 0) words.push({ items: current, space: space ?? item });
    current = [];
    space = item;
  }
  if (current.length > 0)
    words.push({ items: current, space: space ?? { ...current[0]!, text: ' ', space: true } });
  return words;
}

function widthOf(items: readonly TextItem[], size: number, faces: Typefaces): number {
  return items.reduce((sum, item) => sum + faces.widthOf(item.text, item.face, size), 0);
}

/** Cuts a word that is wider than the line into parts that are not. */
function brokenWord(items: readonly TextItem[], size: number, width: number, faces: Typefaces): TextItem[][] {
  const parts: TextItem[][] = [];
  let part: TextItem[] = [];
  let used = 0;
  for (const item of items) {
    let text = '';
    for (const { segment } of clusters.segment(item.text)) {
      const needed = faces.widthOf(segment, item.face, size);
      if (used + needed > width && used > 0) {
        if (text !== '') part.push({ ...item, text });
        if (part.length > 0) parts.push(part);
        part = [];
        text = '';
        used = 0;
      }
      text += segment;
      used += needed;
    }
    if (text !== '') part.push({ ...item, text });
  }
  if (part.length > 0) parts.push(part);
  return parts;
}

function placedLine(
  items: readonly TextItem[],
  base: 'ltr' | 'rtl',
  size: number,
  faces: Typefaces,
): TextLine {
  const merged: { text: string; face: string; level: number }[] = [];
  for (const { text, face, level } of visualOrder(items, base)) {
    const last = merged.at(-1);
    const leftToRight = level % 2 === 0;
    if (leftToRight && last !== undefined && last.face === face && last.level === level) last.text += text;
    else merged.push({ text, face, level });
  }
  let x = 0;
  const pieces = merged.map(({ text, face }) => {
    const piece = { text, face, x };
    x += faces.widthOf(text, face, size);
    return piece;
  });
  return { pieces, width: x };
}
