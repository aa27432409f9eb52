import type { DrawingPoint, Mark } from './drawing.ts';
import { textWidth } from './text-width.ts';

/** One entry of a legend: a sample and what it stands for. */
export interface LegendEntry {
  readonly text: string;
  /** Width of the sample [drawing unit]. */
  readonly width: number;
  /** Draws the sample from its left end, centred on the line of text. */
  readonly sample: (left: DrawingPoint) => readonly Mark[];
}

/** Height of one row of a legend, for letters of this size [drawing unit]. */
export function legendRowHeight(size: number): number {
  return 1.55 * size;
}

/** Breaks the entries into rows that fit the width. */
export function legendRows(
  entries: readonly LegendEntry[],
  width: number,
  size: number,
): readonly (readonly LegendEntry[])[] {
  const rows: LegendEntry[][] = [];
  let row: LegendEntry[] = [];
  let used = 0;
  for (const entry of entries) {
    const needed = entryWidth(entry, size);
    if (row.length > 0 && used + needed > width) {
      rows.push(row);
      row = [];
      used = 0;
    }
    row.push(entry);
    used += needed;
  }
  if (row.length > 0) rows.push(row);
  return rows;
}

/** Draws rows of a legend, the first row's top left corner given. */
export function drawLegend(
  rows: readonly (readonly LegendEntry[])[],
  topLeft: DrawingPoint,
  size: number,
): Mark[] {
  const marks: Mark[] = [];
  rows.forEach((row, index) => {
    let x = topLeft.x;
    const y = topLeft.y + (index + 0.5) * legendRowHeight(size);
    for (const entry of row) {
      marks.push(...entry.sample({ x, y }));
      const at = { x: x + entry.width + 0.5 * size, y: y + 0.34 * size };
      marks.push({ kind: 'text', role: 'label', at, text: entry.text, anchor: 'start', size });
      x += entryWidth(entry, size);
    }
  });
  return marks;
}

function entryWidth(entry: LegendEntry, size: number): number {
  return entry.width + 0.5 * size + textWidth(entry.text, size) + 1.4 * size;
}
