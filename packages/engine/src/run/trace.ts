import type { Channel, LogBatch } from './log-batch.ts';

/** Groups of rows kept at most [-]; beyond it two become one, so that the memory does not grow with the log. */
const GROUPS_MOST = 2 ** 17;

/** Readings that a log can be drawn by. */
export const TRACE_CHANNELS: readonly Channel[] = [
  'voltage_V',
  'current_A',
  'travel_m_per_s',
  'position_m',
  'feed_m_per_s',
  'air_pressure_Pa',
  'air_flow_m3_per_s',
];

/** First, last, least and greatest value of a reading in each group of rows: an even line drawn by them misses no peak. */
export interface ChannelTrace {
  /** First value of each group, in the unit of the channel [-]. */
  readonly first: Float32Array;
  /** Last value [-]. */
  readonly last: Float32Array;
  /** Least value [-]. */
  readonly least: Float32Array;
  /** Greatest value [-]. */
  readonly most: Float32Array;
}

/** A log as it can be drawn: groups of rows that follow each other. */
export interface LogTrace {
  /** Rows in a group [-]. */
  readonly rowsEach: number;
  /** Time of the first row of each group [s]. */
  readonly start: Float64Array;
  /** Time of its last row [s]. */
  readonly end: Float64Array;
  /** Way at its first row: the position, else travel summed up, else the time [m]. */
  readonly way: Float64Array;
  /** Whether the logger was silent before the group or within it [-]. */
  readonly silent: Uint8Array;
  readonly channels: { readonly [C in Channel]?: ChannelTrace };
}

interface Building {
  readonly first: Float32Array;
  readonly last: Float32Array;
  readonly least: Float32Array;
  readonly most: Float32Array;
}

/** A log being drawn. */
export interface TraceBuilder {
  readonly push: (batch: LogBatch) => void;
  readonly end: () => LogTrace;
}

/**
 * Gathers a log for drawing while it is read, in flat memory: rows in groups, each with its first, last, least and
 * greatest value, so that a peak of one row is seen at every zoom.
 *
 * @returns the builder [record]
 * @source Jugel, Jerzak, Hackenbroich and Markl, PVLDB 7 (2014) 797-808 (M4)
 * @example
 * traceLog().end().rowsEach // => 1
 */
export function traceLog(): TraceBuilder {
  let rowsEach = 1;
  let groups = 0;
  let inGroup = 0;
  let lastTime = Number.NaN;
  let lastSpeed = Number.NaN;
  let interval = Number.NaN;
  let summed = 0;
  const start = new Float64Array(GROUPS_MOST);
  const end = new Float64Array(GROUPS_MOST);
  const way = new Float64Array(GROUPS_MOST);
  const silent = new Uint8Array(GROUPS_MOST);
  const lists = new Map<Channel, Building>();

  const listOf = (channel: Channel): Building => {
    const known = lists.get(channel);
    if (known !== undefined) return known;
    const empty = (): Float32Array => new Float32Array(GROUPS_MOST).fill(Number.NaN);
    const made = { first: empty(), last: empty(), least: empty(), most: empty() };
    lists.set(channel, made);
    return made;
  };
  const pair = (): void => {
    groups = Math.floor(groups / 2);
    rowsEach *= 2;
    for (let i = 0; i < groups; i += 1) {
      start[i] = start[2 * i]!;
      end[i] = end[2 * i + 1]!;
      way[i] = way[2 * i]!;
      silent[i] = silent[2 * i]! | silent[2 * i + 1]!;
    }
    for (const { first, last, least, most } of lists.values()) {
      for (let i = 0; i < groups; i += 1) {
        first[i] = either(first[2 * i]!, first[2 * i + 1]!);
        last[i] = either(last[2 * i + 1]!, last[2 * i]!);
        least[i] = lesser(least[2 * i]!, least[2 * i + 1]!);
        most[i] = -lesser(-most[2 * i]!, -most[2 * i + 1]!);
      }
    }
  };
  const row = (
    batch: LogBatch,
    i: number,
    channels: readonly (readonly [Building, Float64Array])[],
  ): void => {
    const time = batch.time_s[i]!;
    const speed = batch.channels.travel_m_per_s?.[i] ?? Number.NaN;
    const step = time - lastTime;
    if (step > 0) {
      if (Number.isNaN(interval)) interval = step;
      // a median of sorts: it moves by a hundredth of itself towards each step
      interval *= step > interval ? 1.01 : 0.99;
      if (!Number.isNaN(speed) && !Number.isNaN(lastSpeed)) summed += 0.5 * (speed + lastSpeed) * step;
    }
    if (inGroup === rowsEach || groups === 0) {
      if (groups === GROUPS_MOST) pair();
      groups += 1;
      inGroup = 0;
      const at = groups - 1;
      start[at] = time;
      silent[at] = 0;
      const position = batch.channels.position_m?.[i];
      way[at] = position ?? (batch.channels.travel_m_per_s === undefined ? time : summed);
      for (const [{ first, last, least, most }] of channels) {
        first[at] = Number.NaN;
        last[at] = Number.NaN;
        least[at] = Number.NaN;
        most[at] = Number.NaN;
      }
    }
    const at = groups - 1;
    inGroup += 1;
    end[at] = time;
    if (step > Math.max(0.2, 4 * interval)) silent[at] = 1;
    for (const [{ first, last, least, most }, values] of channels) {
      const value = values[i]!;
      if (Number.isNaN(value)) continue;
      if (Number.isNaN(first[at]!)) first[at] = value;
      last[at] = value;
      if (!(least[at]! <= value)) least[at] = value;
      if (!(most[at]! >= value)) most[at] = value;
    }
    lastTime = time;
    lastSpeed = speed;
  };
  return {
    push: (batch) => {
      const channels = TRACE_CHANNELS.flatMap((channel) => {
        const values = batch.channels[channel];
        return values === undefined ? [] : [[listOf(channel), values] as const];
      });
      for (let i = 0; i < batch.time_s.length; i += 1) row(batch, i, channels);
    },
    end: () => ({
      rowsEach,
      start: start.slice(0, groups),
      end: end.slice(0, groups),
      way: way.slice(0, groups),
      silent: silent.slice(0, groups),
      channels: Object.fromEntries(
        [...lists].map(([channel, { first, last, least, most }]) => [
          channel,
          {
            first: first.slice(0, groups),
            last: last.slice(0, groups),
            least: least.slice(0, groups),
            most: most.slice(0, groups),
          },
        ]),
      ),
    }),
  };
}

function either(a: number, b: number): number {
  return Number.isNaN(a) ? b : a;
}

function lesser(a: number, b: number): number {
  if (Number.isNaN(a)) return b;
  return Number.isNaN(b) ? a : Math.min(a, b);
}
