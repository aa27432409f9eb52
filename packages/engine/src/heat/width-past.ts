import type { Axis } from './axis.ts';

/** Width of a row of cells in which a temperature was passed, straight between their middles; NaN cells are cut out [m]. */
export function widthPast(across: Axis, peak: (cell: number) => number, temperature: number): number {
  let width = 0;
  /** Length between two places in which the line from one value to the other lies above. */
  const above = (length: number, from: number, to: number): number => {
    if (Number.isNaN(from)) return to > temperature ? length : 0;
    if (Number.isNaN(to)) return from > temperature ? length : 0;
    if (from > temperature && to > temperature) return length;
    if (from <= temperature && to <= temperature) return 0;
    return length * Math.abs((Math.max(from, to) - temperature) / (from - to));
  };
  for (let cell = 0; cell + 1 < across.centres.length; cell += 1) {
    const [from, to] = [peak(cell), peak(cell + 1)];
    if (Number.isNaN(from) && Number.isNaN(to)) continue;
    // only the metal's half of a pair at the groove's edge counts
    if (Number.isNaN(from)) width += above(across.widths[cell + 1]! / 2, from, to);
    else if (Number.isNaN(to)) width += above(across.widths[cell]! / 2, from, to);
    else width += above(across.centres[cell + 1]! - across.centres[cell]!, from, to);
  }
  return width;
}
