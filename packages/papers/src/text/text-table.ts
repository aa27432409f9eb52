/** One column of a text table. */
export interface TextColumn {
  readonly title: string;
  readonly align: 'start' | 'end';
}

/** Sets a table in fixed-width letters: two spaces between columns, a rule under the head. */
export function textTable(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[])[],
  indent = '  ',
): string[] {
  const widths = columns.map((column, index) =>
    Math.max(letters(column.title), ...rows.map((row) => letters(row[index] ?? ''))),
  );
  const line = (cells: readonly string[]): string =>
    `${indent}${columns.map(({ align }, index) => padded(cells[index] ?? '', widths[index]!, align)).join('  ')}`.trimEnd();
  return [
    line(columns.map((column) => column.title)),
    `${indent}${widths.map((width) => '─'.repeat(width)).join('  ')}`,
    ...rows.map(line),
  ];
}

function padded(text: string, width: number, align: 'start' | 'end'): string {
  const space = ' '.repeat(Math.max(0, width - letters(text)));
  return align === 'end' ? space + text : text + space;
}

/** Signs as they stand on the screen, combined ones counted once. */
function letters(text: string): number {
  return [...text.normalize('NFC')].length;
}
