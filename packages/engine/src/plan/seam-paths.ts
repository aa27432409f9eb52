import { drawStream } from '../numeric/index.ts';
import { seamCorrelation } from '../removal/index.ts';

/** Points of a path per range of the process [-]: finer ones raise the extremes by less than 1 % of their size. */
const POINTS_PER_RANGE = 10;

/** Many standardised courses of the process along one length: their extremes, and their means over stations. */
export interface SeamPaths {
  /** How many [-]. */
  readonly count: number;
  /** Least value along the length, one per path [-]. */
  readonly least: Float64Array;
  /** Greatest value along the length, one per path [-]. */
  readonly greatest: Float64Array;
  /** Mean over this many stations, one per path [-]. */
  readonly stationMean: (stations: number) => Float64Array;
}

/** The greatest value along a length, and the mean over stations beside it: over many courses [-]. */
export interface SeamExtremes {
  readonly mean: number;
  readonly sd: number;
  /** Covariance of the greatest value with the mean over the stations; that of the least value is the same [-]. */
  readonly withStations: number;
}

const extremesKnown = new WeakMap<SeamPaths, SeamExtremes[]>();

/** How the greatest value along a length lies, and how much of it so many stations see. */
export function extremesWith(paths: SeamPaths, stations: number): SeamExtremes {
  const known = extremesKnown.get(paths) ?? [];
  extremesKnown.set(paths, known);
  const made = known[stations] ?? makeExtremes(paths, stations);
  known[stations] = made;
  return made;
}

function makeExtremes(paths: SeamPaths, stations: number): SeamExtremes {
  const { count, greatest, least } = paths;
  const seen = paths.stationMean(stations);
  let [sum, square, shared] = [0, 0, 0];
  // A course turned over is as likely: its greatest value is the least one's opposite.
  for (let path = 0; path < count; path += 1) {
    const [high, low] = [greatest[path]!, -least[path]!];
    sum += high + low;
    square += high * high + low * low;
    shared += (high - low) * seen[path]!;
  }
  const mean = sum / (2 * count);
  return {
    mean,
    sd: Math.sqrt(Math.max(0, square / (2 * count) - mean * mean)),
    // Means of both cancel: that of a course and its opposite is nothing.
    withStations: shared / (2 * count),
  };
}

/** Where stations lie: even, the outer ones half a gap from the ends, so that no end goes unseen [m]. */
export function stationPlaces(length: number, stations: number): number[] {
  return Array.from({ length: stations }, (_, index) => (length * (index + 0.5)) / stations);
}

/**
 * Variance of the mean of the standardised process over even stations along a length.
 *
 * @param length - length of the seam [m], > 0
 * @param stations - how many [-], at least 1
 * @param range - range of the process [m], > 0
 * @returns variance [-]
 * @source derived: mean of the correlations of all pairs, Matern 3/2
 * @example
 * stationVariance(1, 1, 0.25) // => 1
 */
export function stationVariance(length: number, stations: number, range: number): number {
  if (range !== variancesRange || variances.size > LENGTHS_MOST) variances.clear();
  variancesRange = range;
  let ofLength = variances.get(length);
  if (ofLength === undefined) {
    ofLength = [];
    variances.set(length, ofLength);
  }
  let variance = ofLength[stations];
  if (variance === undefined) {
    variance = varianceOf(length, stations, range);
    ofLength[stations] = variance;
  }
  return variance;
}

/** Variances of station means kept, by length and stations: a search asks for few of them, often. */
const variances = new Map<number, number[]>();
const LENGTHS_MOST = 200;
let variancesRange = Number.NaN;

function varianceOf(length: number, stations: number, range: number): number {
  let sum = stations;
  const gap = length / stations;
  for (let apart = 1; apart < stations; apart += 1) {
    sum += 2 * (stations - apart) * seamCorrelation(apart * gap, range);
  }
  return sum / stations ** 2;
}

/**
 * Draws courses of the process along the seam on a fine grid.
 *
 * The Matern 3/2 process is two states, value and slope, that go from point to point exactly as a linear Gaussian step.
 *
 * @param length - length cut [m], > 0
 * @param range - range of the process [m], > 0
 * @param count - how many courses [-], at least 1
 * @param seed - the seed [-], a whole number from 0 to 2^31 - 1
 * @returns the courses [record]
 * @source Hartikainen and Särkkä, Kalman filtering and smoothing solutions to temporal Gaussian process regression models (2010), Matern 3/2
 * @example
 * drawSeamPaths(1, 0.25, 4, 1).least.every((value, i) => value <= drawSeamPaths(1, 0.25, 4, 1).greatest[i]) // => true
 */
export function drawSeamPaths(length: number, range: number, count: number, seed: number): SeamPaths {
  const steps = Math.max(8, Math.ceil((length / range) * POINTS_PER_RANGE));
  const points = steps + 1;
  const rate = Math.sqrt(3) / range;
  const t = (rate * length) / steps;
  const decay = Math.exp(-t);
  // Slope in units of the rate, so that both states have variance 1 when the process is under way.
  const [aa, ab, ba, bb] = [decay * (1 + t), decay * t, -decay * t, decay * (1 - t)];
  const qaa = 1 - aa * aa - ab * ab;
  const qab = -(aa * ba + ab * bb);
  const qbb = 1 - ba * ba - bb * bb;
  const laa = Math.sqrt(Math.max(0, qaa));
  const lab = laa > 0 ? qab / laa : 0;
  const lbb = Math.sqrt(Math.max(0, qbb - lab * lab));
  const stream = drawStream(seed);
  const values = new Float32Array(points * count);
  const least = new Float64Array(count);
  const greatest = new Float64Array(count);
  for (let path = 0; path < count; path += 1) {
    let value = stream.normal();
    let slope = stream.normal();
    let low = value;
    let high = value;
    values[path * points] = value;
    for (let step = 1; step <= steps; step += 1) {
      const first = stream.normal();
      const next = aa * value + ab * slope + laa * first;
      slope = ba * value + bb * slope + lab * first + lbb * stream.normal();
      value = next;
      values[path * points + step] = value;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    least[path] = low;
    greatest[path] = high;
  }
  const means = new Map<number, Float64Array>();
  const stationMean = (stations: number): Float64Array => {
    const known = means.get(stations);
    if (known !== undefined) return known;
    const places = stationPlaces(1, stations).map((place) => Math.round(place * steps));
    const mean = new Float64Array(count);
    for (let path = 0; path < count; path += 1) {
      let sum = 0;
      for (const place of places) sum += values[path * points + place]!;
      mean[path] = sum / stations;
    }
    means.set(stations, mean);
    return mean;
  };
  return { count, least, greatest, stationMean };
}

/** Sets of courses kept: who edits a job meets the same ones at every edit. */
const KEPT_MOST = 24;
const kept = new Map<string, SeamPaths>();

/** The courses of a length, kept from the last plans; the same as would be drawn anew. */
export function seamPathsOf(length: number, range: number, count: number, seed: number): SeamPaths {
  const key = `${length}/${range}/${count}/${seed}`;
  const paths = kept.get(key) ?? drawSeamPaths(length, range, count, seed);
  kept.delete(key);
  kept.set(key, paths);
  if (kept.size > KEPT_MOST) kept.delete(kept.keys().next().value!);
  return paths;
}
