import type { ChannelTrace } from '@furrow/engine';

/** Where the groups of a trace lie on the axis that is drawn; NaN for those that are not on it. */
export type GroupPlaces = Float64Array;

/**
 * Places of groups, and of twos, fours, eights of neighbours: least and greatest of each, so that what is not seen is passed
 * over whole. Reversed ends: none lies on the axis; without end: some do and some do not.
 */
export interface PlacePyramid {
  readonly low: readonly Float64Array[];
  readonly high: readonly Float64Array[];
}

/** First, last, least and greatest value of groups and of their twos, fours, eights: NaN where nothing was read. */
export interface ChannelPyramid {
  readonly levels: readonly ChannelTrace[];
  /** Whether the logger was silent, or cells could not be read [-]. */
  readonly gap: readonly Uint8Array[];
}

/** Builds levels by putting two of each level together until one is left. */
function raise<Level>(
  ground: Level,
  lengthOf: (level: Level) => number,
  pair: (below: Level) => Level,
): Level[] {
  const levels = [ground];
  for (let top = ground; lengthOf(top) > 1; ) {
    top = pair(top);
    levels.push(top);
  }
  return levels;
}

/** The places of groups at every level. */
export function placePyramid(places: GroupPlaces): PlacePyramid {
  const [none, any] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const ground = {
    low: places.map((place) => (Number.isNaN(place) ? none : place)),
    high: places.map((place) => (Number.isNaN(place) ? any : place)),
  };
  const levels = raise(
    ground,
    ({ low }) => low.length,
    (below) => {
      const count = Math.ceil(below.low.length / 2);
      const [low, high] = [new Float64Array(count), new Float64Array(count)];
      for (let at = 0; at < count; at += 1) {
        const [left, right] = [2 * at, Math.min(2 * at + 1, below.low.length - 1)];
        const partly = (below.low[left] === none) !== (below.low[right] === none);
        low[at] = partly ? any : Math.min(below.low[left]!, below.low[right]!);
        high[at] = partly ? none : Math.max(below.high[left]!, below.high[right]!);
      }
      return { low, high };
    },
  );
  return { low: levels.map(({ low }) => low), high: levels.map(({ high }) => high) };
}

/** A reading at every level. */
export function channelPyramid(channel: ChannelTrace, silent: Uint8Array): ChannelPyramid {
  const gap = silent.map((isSilent, group) =>
    isSilent === 1 || Number.isNaN(channel.first[group]!) ? 1 : 0,
  );
  const levels = raise(
    { channel, gap },
    ({ gap: { length } }) => length,
    (below) => {
      const length = Math.ceil(below.gap.length / 2);
      const empty = (): Float32Array => new Float32Array(length);
      const above = { first: empty(), last: empty(), least: empty(), most: empty() };
      const gapAbove = new Uint8Array(length);
      const { first, last, least, most } = below.channel;
      for (let at = 0; at < length; at += 1) {
        const [left, right] = [2 * at, Math.min(2 * at + 1, below.gap.length - 1)];
        gapAbove[at] = below.gap[left]! | below.gap[right]!;
        // where only one of two was read, it stands for both
        const from = Number.isNaN(first[left]!) ? right : left;
        const to = Number.isNaN(first[right]!) ? left : right;
        above.first[at] = first[from]!;
        above.last[at] = last[to]!;
        above.least[at] = Math.min(least[from]!, least[to]!);
        above.most[at] = Math.max(most[from]!, most[to]!);
      }
      return { channel: above, gap: gapAbove };
    },
  );
  return { levels: levels.map((level) => level.channel), gap: levels.map((level) => level.gap) };
}

/** The group whose place is nearest; undefined where there is none. */
export function nearestGroup({ low, high }: PlacePyramid, at: number): number | undefined {
  let best: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  const away = (level: number, node: number): number =>
    Math.max(low[level]![node]! - at, at - high[level]![node]!, 0);
  const visit = (level: number, node: number): void => {
    const least0 = away(level, node);
    if (!(least0 < least)) return;
    if (level === 0) {
      least = least0;
      best = node;
      return;
    }
    const [left, right] = [2 * node, Math.min(2 * node + 1, low[level - 1]!.length - 1)];
    const nearer = away(level - 1, right) < away(level - 1, left) ? right : left;
    visit(level - 1, nearer);
    visit(level - 1, left + right - nearer);
  };
  if (low[0]!.length > 0) visit(low.length - 1, 0);
  return best;
}
