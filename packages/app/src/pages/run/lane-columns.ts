import type { ChannelPyramid, PlacePyramid } from './trace-pyramid.ts';

/** What each column of pixels shows of a reading: nothing, or its first, last, least and greatest value. */
export interface LaneColumns {
  readonly first: Float64Array;
  readonly last: Float64Array;
  readonly least: Float64Array;
  readonly most: Float64Array;
  /** Whether the line is broken before the column: the logger was silent, or the cells could not be read. */
  readonly broken: Uint8Array;
}

/** Width of what is drawn as one [px]. */
const AS_ONE = 0.5;

/**
 * Gathers groups into columns of pixels between two ends of the axis: none of their extremes is lost. Neighbours that lie
 * within half a pixel are taken together, and what is not seen is passed over, so that any log takes as long as any other.
 */
export function laneColumns(
  { levels, gap }: ChannelPyramid,
  { low, high }: PlacePyramid,
  [from, to]: readonly [number, number],
  width: number,
): LaneColumns {
  const empty = (): Float64Array => new Float64Array(width).fill(Number.NaN);
  const columns = {
    first: empty(),
    last: empty(),
    least: empty(),
    most: empty(),
    broken: new Uint8Array(width),
  };
  const scale = width / (to - from);
  const asOne = AS_ONE / scale;
  let broken = false;
  const visit = (level: number, node: number): void => {
    const [start, end] = [low[level]![node]!, high[level]![node]!];
    if (!(end >= from && start <= to)) {
      if (gap[level]![node] === 1) broken = true;
      return;
    }
    if (level > 0 && end - start > asOne) {
      visit(level - 1, 2 * node);
      if (2 * node + 1 < low[level - 1]!.length) visit(level - 1, 2 * node + 1);
      return;
    }
    if (gap[level]![node] === 1) broken = true;
    const { first, last, least, most } = levels[level]!;
    if (Number.isNaN(first[node]!)) return;
    const at = Math.min(width - 1, Math.max(0, Math.floor((start - from) * scale)));
    if (Number.isNaN(columns.first[at]!)) {
      columns.first[at] = first[node]!;
      columns.least[at] = least[node]!;
      columns.most[at] = most[node]!;
      if (broken) columns.broken[at] = 1;
    } else {
      columns.least[at] = Math.min(columns.least[at]!, least[node]!);
      columns.most[at] = Math.max(columns.most[at]!, most[node]!);
    }
    broken = false;
    columns.last[at] = last[node]!;
  };
  if (low[0]!.length > 0) visit(low.length - 1, 0);
  return columns;
}
