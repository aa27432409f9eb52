import { expect, test } from 'vitest';
import type { TableBlock } from '../blocks/index.ts';
import { blocksToText } from './block-to-text.ts';

const TABLE: TableBlock = {
  kind: 'table',
  caption: 'Limits',
  columns: [
    { title: 'Limit', align: 'start', weight: 1 },
    { title: 'There is', align: 'end', weight: 1 },
    { title: 'Made', align: 'start', weight: 1, hand: true },
    { title: 'Source', align: 'start', weight: 1, below: 'once' },
    { title: 'Note', align: 'start', weight: 1, below: 'by_row' },
  ],
  rows: [
    ['one', '5 A', '', 'a book', 'first'],
    ['two', '50 A', '', 'a book', ''],
    ['three', '500 A', '', 'the kit', 'third.'],
  ],
};

test('a table keeps its columns, leaves out those for a hand, and tells long texts below', () => {
  expect(blocksToText([TABLE])).toBe(`Limits
  Limit  There is
  ─────  ────────
  one         5 A
  two        50 A
  three     500 A
  Source: a book; the kit.
    one: first.
    three: third.
`);
});

test('cells that are too wide are broken into lines, words before numbers, and none is lost', () => {
  const words = 'a rule of many words '.repeat(8).trim();
  const text = blocksToText([{ ...TABLE, rows: [[words, '12 min set against it', '', '', '']] }]);
  const lines = text.split('\n');
  expect(Math.max(...lines.map((line) => line.length))).toBe(100);
  expect(lines.filter((line) => line.includes('12 min set against it'))).toHaveLength(1);
  expect(text.match(/words/gu)).toHaveLength(8);
});

test('blocks stand apart, a heading stands with what it heads, and nothing of a text commands the terminal', () => {
  const text = blocksToText([
    { kind: 'heading', level: 1, text: 'Seam \u001b[2J', below: ['back-gouge'] },
    { kind: 'heading', level: 2, text: 'Cautions' },
    { kind: 'list', tone: 'caution', items: ['mind the jet', 'mind\u0007 the heat'] },
    { kind: 'list', tone: 'plain', items: [] },
    { kind: 'signatures', roles: ['Read by'] },
    { kind: 'paragraph', tone: 'plain', text: 'The end.' },
  ]);
  expect(text).toBe(`Seam [2J
back-gouge

Cautions
  ! mind the jet
  ! mind the heat

The end.
`);
});
