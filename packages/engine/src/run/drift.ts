import { changePoints, noiseOf } from './change-points.ts';
import type { Blocks } from './steady-blocks.ts';

/** What a level may do before it counts as drifting. */
export interface DriftWindow {
  readonly target: number;
  readonly least: number;
  readonly most: number;
}

/** A stretch of blocks whose level lies outside its window. */
export interface DriftStretch {
  /** Blocks from here, up to but not including `to` [-]. */
  readonly from: number;
  readonly to: number;
  /** Mean level of it. */
  readonly mean: number;
}

/** Fewest blocks in which a drift can be told from one bad block [-]. */
const BLOCKS_LEAST = 4;
/** Share of the way to the window's end from which a neighbouring level belongs to the drift [-]: judgement, no source. */
const BELONGS = 0.4;

/**
 * Penalty of a change of level: three times that of the criterion by Schwarz, as blocks of a real arc hang together.
 * Judgement, held to the annotated quality-control series in `published/`.
 */
function driftPenalty(series: Float64Array, leastNoise: number): number {
  return 6 * Math.max(noiseOf(series), leastNoise) ** 2 * Math.log(Math.max(2, series.length));
}

/** Stretches whose level left the window, each with the slope that leads out of it and back. */
export function driftStretches({ value }: Blocks, window: DriftWindow): DriftStretch[] {
  if (value.length < BLOCKS_LEAST) return [];
  const steady = runningMedian(value);
  // no mean lies outside the window where no value does
  if (steady.every((each) => each >= window.least && each <= window.most)) return [];
  const leastNoise = 0.1 * Math.min(window.most - window.target, window.target - window.least);
  const ends = [...changePoints(steady, driftPenalty(value, leastNoise), 2), value.length];
  const segments = ends.map((to, i) => {
    const from = ends[i - 1] ?? 0;
    return { from, to, mean: meanOf(steady.subarray(from, to)) };
  });
  const side = (mean: number): number => (mean > window.most ? 1 : mean < window.least ? -1 : 0);
  const leans = (mean: number): number => {
    const high = window.target + BELONGS * (window.most - window.target);
    const low = window.target - BELONGS * (window.target - window.least);
    return mean > high ? 1 : mean < low ? -1 : 0;
  };
  const found: DriftStretch[] = [];
  for (let i = 0; i < segments.length; i += 1) {
    const way = side(segments[i]!.mean);
    if (way === 0) continue;
    let first = i;
    while (first > 0 && leans(segments[first - 1]!.mean) === way) first -= 1;
    while (i + 1 < segments.length && leans(segments[i + 1]!.mean) === way) i += 1;
    const { from } = segments[first]!;
    const { to } = segments[i]!;
    if (to - from >= 3) found.push({ from, to, mean: meanOf(steady.subarray(from, to)) });
  }
  return found;
}

/** Blocks in a row outside the window from which a level is told to have left it while the arc burns [-]: one may be odd. */
const LEFT_BLOCKS = 3;

/** First block since which the level lies outside its window; undefined where the last blocks do not. */
export function leftSince(values: Float64Array, { least, most }: DriftWindow): number | undefined {
  let from = values.length;
  while (from > 0 && !(values[from - 1]! >= least && values[from - 1]! <= most)) from -= 1;
  return values.length - from >= LEFT_BLOCKS ? from : undefined;
}

function meanOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Median of each value and its neighbours: one odd block makes no change of level. */
function runningMedian(series: Float64Array): Float64Array {
  return series.map((value, i) => {
    const left = series[i - 1] ?? value;
    const right = series[i + 1] ?? value;
    return Math.max(Math.min(left, value), Math.min(Math.max(left, value), right));
  });
}
