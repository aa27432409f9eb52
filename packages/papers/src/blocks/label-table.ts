import type { TableBlock } from './paper-document.ts';

/** Names and values under each other. */
export function labelTable(
  caption: string,
  rows: readonly (readonly [label: string, value: string])[],
): TableBlock {
  return {
    kind: 'table',
    caption,
    small: true,
    columns: [
      { title: 'What', align: 'start', weight: 1 },
      { title: 'Value', align: 'start', weight: 1.6, strong: true },
    ],
    rows,
  };
}
