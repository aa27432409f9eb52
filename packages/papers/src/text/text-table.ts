import { wrapped } from './wrapped.ts';

/** One column of a text table. */
export interface TextColumn {
  readonly title: string;
  readonly align: 'start' | 'end';
}

const INDENT = '  ';
const GAP = '  ';
/** A column is not made narrower than this [letters]. */
const LEAST = 12;

/**
 * Sets a table in fixed-width letters: two spaces between columns, a rule under the head.
 * Where it would be wider than `width`, its widest columns are broken into lines, those of words first.
 */
export function textTable(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[])[],
  width: number,
): string[] {
  const widths = fittedWidths(columns, rows, width);
  const lines = (cells: readonly string[]): string[] => {
    const parts = columns.map((_column, index) => {
      const cell = cells[index] ?? '';
      return letters(cell) <= widths[index]! ? [cell] : wrapped(cell, widths[index]!);
    });
    const height = Math.max(...parts.map((part) => part.length));
    return Array.from({ length: height }, (_line, at) =>
      `${INDENT}${columns.map(({ align }, index) => padded(parts[index]![at] ?? '', widths[index]!, align)).join(GAP)}`.trimEnd(),
    );
  };
  return [
    ...lines(columns.map((column) => column.title)),
    `${INDENT}${widths.map((each) => '─'.repeat(each)).join(GAP)}`,
    ...rows.flatMap(lines),
  ];
}

function fittedWidths(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[])[],
  width: number,
): number[] {
  const widths = columns.map((column, index) =>
    Math.max(letters(column.title), ...rows.map((row) => letters(row[index] ?? ''))),
  );
  const room = width - INDENT.length - GAP.length * (columns.length - 1);
  for (let over = widths.reduce((sum, each) => sum + each, 0) - room; over > 0; over -= 1) {
    const words = widths.map((each, index) => (columns[index]!.align === 'start' ? each : 0));
    const candidates = Math.max(...words) > LEAST ? words : widths;
    const widest = candidates.indexOf(Math.max(...candidates));
    if (widths[widest]! <= LEAST) break;
    widths[widest]! -= 1;
  }
  return widths;
}

function padded(text: string, width: number, align: 'start' | 'end'): string {
  const space = ' '.repeat(Math.max(0, width - letters(text)));
  return align === 'end' ? space + text : text + space;
}

/** Signs as they stand on the screen, combined ones counted once. */
function letters(text: string): number {
  return [...text.normalize('NFC')].length;
}
