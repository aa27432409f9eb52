import type { ChannelTrace, LogTrace } from '@furrow/engine';

/** Where the groups of a trace lie on the axis that is drawn; NaN for those that are not on it. */
export type GroupPlaces = Float64Array;

/** What each column of pixels shows of a reading: nothing, or its first, last, least and greatest value. */
export interface LaneColumns {
  readonly first: Float64Array;
  readonly last: Float64Array;
  readonly least: Float64Array;
  readonly most: Float64Array;
  /** Whether the line is broken before the column: the logger was silent, or the cells could not be read. */
  readonly broken: Uint8Array;
}

/** Gathers groups into columns of pixels between two ends of the axis: none of their extremes is lost. */
export function laneColumns(
  trace: LogTrace,
  channel: ChannelTrace,
  places: GroupPlaces,
  ends: readonly [number, number],
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
  const scale = width / (ends[1] - ends[0]);
  let broken = false;
  for (let group = 0; group < places.length; group += 1) {
    const at = Math.floor((places[group]! - ends[0]) * scale);
    const off = Number.isNaN(channel.first[group]!);
    if (trace.silent[group] === 1 || off) broken = true;
    if (!(at >= 0 && at < width) || off) continue;
    if (Number.isNaN(columns.first[at]!)) {
      columns.first[at] = channel.first[group]!;
      columns.least[at] = channel.least[group]!;
      columns.most[at] = channel.most[group]!;
      if (broken) columns.broken[at] = 1;
    } else {
      columns.least[at] = Math.min(columns.least[at]!, channel.least[group]!);
      columns.most[at] = Math.max(columns.most[at]!, channel.most[group]!);
    }
    broken = false;
    columns.last[at] = channel.last[group]!;
  }
  return columns;
}

/** The group whose place is nearest; undefined where there is none. */
export function nearestGroup(places: GroupPlaces, at: number): number | undefined {
  let best: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let group = 0; group < places.length; group += 1) {
    const away = Math.abs(places[group]! - at);
    if (away < least) {
      least = away;
      best = group;
    }
  }
  return best;
}
