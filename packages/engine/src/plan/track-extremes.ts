import { pathOf, SERIES, type ShopDraws } from './shop-draws.ts';

/** Factors on the depth at the least and the greatest of a course, one per shop. */
export interface Extremes {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** The same of every track, and of the least of the ridge after each track but the last. */
export interface TrackExtremes {
  readonly low: readonly Float64Array[];
  readonly high: readonly Float64Array[];
  readonly ridge: readonly Float64Array[];
}

/** Extremes along a length of the course that belongs to a series, as strong as a weight makes it. */
export function extremesAlong(draws: ShopDraws, length: number, weight: number, series: number): Extremes {
  const { least, greatest, count } = draws.paths(length);
  const { seamSd } = draws;
  const name = `${length} ${weight} ${series}`;
  return {
    low: draws.kept(`low ${name}`, (shop) =>
      Math.exp(seamSd[shop]! * weight * least[pathOf(series, shop, count)]!),
    ),
    high: draws.kept(`high ${name}`, (shop) =>
      Math.exp(seamSd[shop]! * weight * greatest[pathOf(series, shop, count)]!),
    ),
  };
}

/** A ridge follows the mean of its two neighbours, which is a course of the same kind, weaker by the root of two. */
function ridgeAlong(draws: ShopDraws, length: number, weight: number, track: number): Float64Array {
  const { least, count } = draws.paths(length);
  return draws.kept(`ridge ${length} ${weight} ${track}`, (shop) => {
    const path = pathOf(SERIES.beside - 1 - track, shop, count);
    return Math.exp((draws.seamSd[shop]! * weight * least[path]!) / Math.SQRT2);
  });
}

/**
 * The extremes of every track: those of a floor of as many layers as were run on it.
 *
 * @param weights - how strongly the course shows in a floor of so many layers, less one; NaN: no shop has so few
 * @param layers - layers run on every track, one value per shop
 */
export function trackExtremes(
  draws: ShopDraws,
  length: number,
  weights: readonly number[],
  layers: readonly Uint8Array[],
): TrackExtremes {
  const ofLayers = (of: (weight: number) => Float64Array, run: Uint8Array): Float64Array => {
    const lists = weights.map((weight) => (Number.isNaN(weight) ? undefined : of(weight)));
    const whole = lists.at(-1)!;
    if (lists.every((list) => list === undefined || list === whole)) return whole;
    return whole.map((value, shop) => lists[run[shop]! - 1]?.[shop] ?? value);
  };
  return {
    low: layers.map((run, track) =>
      ofLayers((weight) => extremesAlong(draws, length, weight, track).low, run),
    ),
    high: layers.map((run, track) =>
      ofLayers((weight) => extremesAlong(draws, length, weight, track).high, run),
    ),
    ridge: layers
      .slice(1)
      .map((run, track) => ofLayers((weight) => ridgeAlong(draws, length, weight, track), run)),
  };
}
