import type { DrawStream } from '../../numeric/index.ts';
import { fuseSeam, type SeamPosterior } from './fuse-seam.ts';
import type { SeamReading, SeamSpread } from './seam-states.ts';

/** A stretch that was cut again. */
export interface CutAgain {
  /** Where the cut began [m]. */
  readonly from: number;
  /** Where it ended [m]. */
  readonly to: number;
}

/**
 * Which cut made the floor at a place: the last that went over it.
 *
 * @param place - place along the seam [m], any
 * @param recuts - stretches that were cut again [list], in the order of the work
 * @returns number of the recut, from 1; 0 where none went over it [-]
 * @source none: bookkeeping
 * @example
 * [0.1, 0.4, 0.6].map((place) => cutOf(place, [{ from: 0.3, to: 0.7 }, { from: 0.5, to: 0.7 }])) // => [0,1,2]
 */
export function cutOf(place: number, recuts: readonly CutAgain[]): number {
  return recuts.findLastIndex(({ from, to }) => place >= from && place <= to) + 1;
}

/**
 * Fuses a prediction with readings along a seam that was cut again in places: what was cut at another time is
 * independent of it, so each cut is fused for itself.
 *
 * @param spread - standard deviations and range [record], course and range > 0
 * @param readings - readings less the prediction [list], each with a standard deviation > 0, of the floor as it is now
 * @param at - places asked for [list], rising
 * @param recuts - stretches that were cut again [list], in the order of the work
 * @returns the process at the places asked for [record]
 * @source derived: passes share neither their level nor their course
 * @example
 * const spread = { common: 1, course: 0.5, range: 0.25 };
 * fusePieces(spread, [{ at: 1, value: 1, sd: 0.5 }], [1, 2], [{ from: 1.5, to: 2.5 }]).mean // => [0.8333333333333333,0]
 */
export function fusePieces(
  spread: SeamSpread,
  readings: readonly SeamReading[],
  at: readonly number[],
  recuts: readonly CutAgain[],
): SeamPosterior {
  if (recuts.length === 0) return fuseSeam(spread, readings, at);
  const own = at.map((place) => cutOf(place, recuts));
  const pieces = [...new Set(own)].map((cut) => {
    const indices = own.flatMap((each, index) => (each === cut ? [index] : []));
    const read = readings.filter((reading) => cutOf(reading.at, recuts) === cut);
    return {
      cut,
      indices,
      posterior: fuseSeam(
        spread,
        read,
        indices.map((index) => at[index]!),
      ),
    };
  });
  const spreadOut = (
    take: (piece: (typeof pieces)[number]) => ArrayLike<number> | undefined,
  ): Float64Array => {
    const out = new Float64Array(at.length);
    for (const piece of pieces) {
      const values = take(piece);
      if (values === undefined) continue;
      for (const [k, index] of piece.indices.entries()) out[index] = values[k]!;
    }
    return out;
  };
  return {
    at,
    mean: [...spreadOut(({ posterior }) => posterior.mean)],
    sd: [...spreadOut(({ posterior }) => posterior.sd)],
    covarianceWith: (index) =>
      spreadOut(({ cut, indices, posterior }) =>
        cut === own[index] ? posterior.covarianceWith(indices.indexOf(index)) : undefined,
      ),
    draw: (stream: DrawStream) => spreadOut(({ posterior }) => posterior.draw(stream)),
  };
}
