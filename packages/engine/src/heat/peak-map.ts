import type { SectionPoint } from '../groove/index.ts';
import type { SectionHeat } from './section-heat.ts';

/** How near the deepest point a column's floor must be to count as the root [m]. */
const ROOT_BAND = 0.5e-3;

/** Highest temperatures of a section beside and under its groove. */
export interface PeakMap {
  /** Centres of the cells across, increasing [m]. */
  readonly across: Float64Array;
  /** Centres of the cells below the surface, increasing [m]. */
  readonly below: Float64Array;
  /** Highest temperature of each cell, across running fastest; NaN where cut out [K]. */
  readonly peak: Float32Array;
}

export function peakMap({ across, below, peak }: SectionHeat): PeakMap {
  return { across, below, peak };
}

/** A place and the highest temperature there. */
interface Place {
  readonly distance: number;
  readonly peak: number;
}

/** How far from the first place on a temperature was passed, by a straight line between places; 0: not at all. */
function reachOf(places: readonly Place[], temperature: number): number {
  let reach = 0;
  for (let index = 0; index < places.length; index += 1) {
    const here = places[index]!;
    if (!(here.peak >= temperature)) continue;
    const next = places[index + 1];
    reach = here.distance;
    if (next === undefined || next.peak >= temperature) continue;
    reach += ((next.distance - here.distance) * (here.peak - temperature)) / (here.peak - next.peak);
  }
  return Math.max(0, reach);
}

/** Width at the surface that passed a temperature, the groove left out, both sides together [m]. */
export function widthPast(map: PeakMap, floor: readonly SectionPoint[], temperature: number): number {
  const gouged = floor.filter(({ depth }) => depth > 0);
  const left = gouged[0]?.offset ?? 0;
  const right = gouged.at(-1)?.offset ?? 0;
  const side = (edge: number, sign: 1 | -1): number => {
    const places = Array.from(map.across, (offset, index) => ({
      distance: sign * (offset - edge),
      peak: map.peak[index]!,
    })).filter(({ distance, peak }) => distance > 0 && !Number.isNaN(peak));
    return reachOf(sign > 0 ? places : places.reverse(), temperature);
  };
  return side(left, -1) + side(right, 1);
}

/** How far under the root of the groove a temperature was passed [m]. */
export function depthPast(map: PeakMap, floor: readonly SectionPoint[], temperature: number): number {
  const deepest = Math.max(0, ...floor.map(({ depth }) => depth));
  const root = floor.filter(({ depth }) => depth > deepest - ROOT_BAND);
  const first = root[0]?.offset ?? 0;
  const last = root.at(-1)?.offset ?? 0;
  const columns = map.across.length;
  let most = 0;
  map.across.forEach((offset, column) => {
    if (offset < first || offset > last) return;
    const places = Array.from(map.below, (depth, row) => ({
      distance: depth - deepest,
      peak: map.peak[row * columns + column]!,
    })).filter(({ peak }) => !Number.isNaN(peak));
    most = Math.max(most, reachOf(places, temperature));
  });
  return most;
}
