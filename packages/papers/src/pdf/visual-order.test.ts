import { expect, test } from 'vitest';
import { directionOf, type TextItem } from './text-items.ts';
import { visualOrder } from './visual-order.ts';

function line(text: string): TextItem[] {
  return text.split(/(\s)/u).map((part) => ({
    text: part,
    face: 'face',
    direction: directionOf(part),
    space: part === ' ',
  }));
}

const order = (text: string, base: 'ltr' | 'rtl'): string =>
  visualOrder(line(text), base)
    .map((item) => item.text)
    .join('');

test('leaves left-to-right text alone', () => {
  expect(order('seam 7 of 9', 'ltr')).toBe('seam 7 of 9');
});

test('paints words of a right-to-left run from the right', () => {
  expect(order('seam שלום עולם ends', 'ltr')).toBe('seam עולם שלום ends');
});

test('keeps a number inside the run it belongs to', () => {
  expect(order('seam שלום 12 עולם ends', 'ltr')).toBe('seam עולם 12 שלום ends');
});

test('paints left-to-right words in their order inside right-to-left text', () => {
  expect(order('שלום long seam עולם', 'rtl')).toBe('עולם long seam שלום');
});
