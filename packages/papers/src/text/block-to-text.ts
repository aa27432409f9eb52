import type { Figure, ListBlock, PaperBlock, TableBlock } from '../blocks/index.ts';
import { plainLine } from './plain-line.ts';
import { textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line of a terminal [-]. */
const WIDTH = 100;

/** Writes blocks for the terminal, an empty line between one and the next; what only paper can carry is left out. */
export function blocksToText(blocks: readonly PaperBlock[]): string {
  const parts = blocks
    .map((block) => ({ block, lines: blockLines(block) }))
    .filter(({ lines }) => lines.length > 0);
  const lines = parts.flatMap(({ block, lines: own }, index) => {
    // a heading and what it heads stand together
    const last = index === parts.length - 1 || (block.kind === 'heading' && block.level === 2);
    return last ? own : [...own, ''];
  });
  return `${lines.join('\n')}\n`;
}

/** The lines of one block. */
function blockLines(block: PaperBlock): string[] {
  switch (block.kind) {
    case 'heading':
      return [block.text, ...(block.below ?? [])].flatMap((text) => wrapped(plainLine(text), WIDTH));
    case 'paragraph':
      return wrapped(plainLine(block.text), WIDTH);
    case 'figures':
      return figureLines(block.items);
    case 'table':
      return tableLines(block);
    case 'list':
      return listLines(block);
    case 'fields':
      return block.items.flatMap(({ label, value }) =>
        value === undefined ? [] : wrapped(plainLine(`${label}: ${value}`), WIDTH, '  '),
      );
    case 'columns':
      return block.columns.flatMap((column) => column.blocks.flatMap(blockLines));
    case 'drawing':
    case 'signatures':
      return [];
  }
}

function figureLines(figures: readonly Figure[]): string[] {
  const widest = Math.max(...figures.map(({ label }) => label.length));
  return figures.map(({ label, value, unit, note }) => {
    const amount = unit === undefined ? value : `${value} ${unit}`;
    return `  ${label.padEnd(widest)}  ${amount}${note === undefined ? '' : `  (${note})`}`;
  });
}

function listLines({ tone, items }: ListBlock): string[] {
  return items.flatMap((item) => wrapped(plainLine(item), WIDTH, tone === 'caution' ? '  ! ' : '  - '));
}

/** The columns that fit; those that do not are told below, each text once, and those for a hand to fill in are left out. */
function tableLines({ caption, columns, rows }: TableBlock): string[] {
  const numbered = columns.map((column, index) => ({ column, index })).filter(({ column }) => !column.hand);
  const beside = numbered.filter(({ column }) => column.below === undefined);
  const below = numbered.flatMap(({ column, index }) => {
    if (column.below === undefined) return [];
    const texts = rows.map((row) => row[index] ?? '');
    if (column.below === 'by_row') {
      return rows.flatMap((row, at) =>
        texts[at] === undefined || texts[at] === ''
          ? []
          : wrapped(plainLine(`${row[0]}: ${ended(texts[at])}`), WIDTH, '    '),
      );
    }
    const once = [...new Set(texts)].filter((text) => text !== '');
    return once.length === 0
      ? []
      : wrapped(plainLine(`${column.title}: ${ended(once.join('; '))}`), WIDTH, '  ');
  });
  const cells = rows.map((row) => beside.map(({ index }) => plainLine(row[index] ?? '')));
  return [
    ...wrapped(plainLine(caption), WIDTH),
    ...textTable(
      beside.map(({ column }) => column),
      cells,
      WIDTH,
    ),
    ...below,
  ];
}

/** A text with a full stop at its end, and only one. */
function ended(text: string): string {
  return text.endsWith('.') ? text : `${text}.`;
}
