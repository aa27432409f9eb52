import { normalProbability } from '../numeric/index.ts';
import type { FloorShops } from './floor-shops.ts';

/** Further passes on top of each other, at one travel. */
export interface FurtherCut {
  /** Number of the first of them, from 0 [-]. */
  readonly first: number;
  /** How many [-]. */
  readonly passes: number;
  /** Their travel [m/s]. */
  readonly travel: number;
}

/** Chances of a floor. */
export interface OntoFloorChances {
  /** Depth reached everywhere it must [-]. */
  readonly reached: number;
  /** No point too deep [-]. */
  readonly notTooDeep: number;
  /** Ligament kept [-]. */
  readonly ligamentKept: number;
}

/** What a floor must keep to, and what a pass can do. */
export interface FloorDemand {
  /** Part of a pass's depth that is cut at each place [-]. */
  readonly share: ArrayLike<number>;
  /** Whether the least depth must be reached at each place. */
  readonly must: readonly boolean[];
  /** Least depth [m]. */
  readonly least: number;
  /** Greatest depth [m]. */
  readonly most: number;
  /** Greatest depth that keeps the least ligament [m]. */
  readonly mostForLigament: number;
  /** Greatest depth that the energy balance allows one pass at a travel [m]. */
  readonly ceiling: (travel: number) => number;
}

/** Depth that stands for none where its logarithm is taken [m]. */
const NONE = 1e-6;

/** A floor in shops, and what further passes would make of it. */
export class FloorAfter {
  readonly shops: number;
  /** All shops, by their number. */
  readonly every: Int32Array;
  private readonly depth: Float64Array;
  private readonly floor: FloorShops;
  private readonly demand: FloorDemand;
  private readonly places: number;
  private readonly parts = new Map<string, Float64Array>();
  private readonly after: Float64Array;

  constructor(floor: FloorShops, demand: FloorDemand, depth = floor.depth) {
    this.shops = floor.count;
    this.every = Int32Array.from({ length: this.shops }, (_, shop) => shop);
    this.floor = floor;
    this.demand = demand;
    this.depth = depth;
    this.places = floor.at.length;
    this.after = new Float64Array(this.places);
  }

  /** The floor once these passes are cut. */
  cut(cut: FurtherCut | undefined): FloorAfter {
    if (cut === undefined) return this;
    const depth = new Float64Array(this.depth.length);
    for (let shop = 0; shop < this.shops; shop += 1) {
      depth.set(this.filled(shop, cut, this.partsOf(cut), this.capOf(cut)), shop * this.places);
    }
    return new FloorAfter(this.floor, this.demand, depth);
  }

  /** In which part of these shops each demand is met. */
  count(shops: Int32Array, cut?: FurtherCut): OntoFloorChances {
    const { least, most, mostForLigament } = this.demand;
    const { low, high } = this.extremes(shops, cut);
    let [reached, notTooDeep, ligamentKept] = [0, 0, 0];
    for (let i = 0; i < shops.length; i += 1) {
      if (low[i]! >= least) reached += 1;
      if (high[i]! <= most) notTooDeep += 1;
      if (high[i]! <= mostForLigament) ligamentKept += 1;
    }
    const all = Math.max(1, shops.length);
    return { reached: reached / all, notTooDeep: notTooDeep / all, ligamentKept: ligamentKept / all };
  }

  /** The same read off the normal distribution of ln depth: few shops tell it more steadily than their count. */
  chances(shops: Int32Array, cut?: FurtherCut): OntoFloorChances {
    const { least, most, mostForLigament } = this.demand;
    const { low, high } = this.extremes(shops, cut);
    const [lowest, deepest] = [lnMoments(low), lnMoments(high)];
    const below = (limit: number): number => normalProbability((Math.log(limit) - deepest.mean) / deepest.sd);
    return {
      reached: normalProbability((lowest.mean - Math.log(least)) / lowest.sd),
      notTooDeep: below(most),
      ligamentKept: below(mostForLigament),
    };
  }

  /** Mean depth over the places where it must be reached, one per shop [m]. */
  means(shops: Int32Array = this.every, cut?: FurtherCut): Float64Array {
    const { must } = this.demand;
    const own = must.reduce((sum, each) => sum + (each ? 1 : 0), 0);
    return this.perShop(shops, cut, (after) => {
      let sum = 0;
      for (let place = 0; place < after.length; place += 1) if (must[place]) sum += after[place]!;
      return sum / Math.max(1, own);
    });
  }

  /** What stations at these places read on the mean, one per shop [m]. */
  readings(places: readonly number[], readingSd: number): Float64Array {
    const sd = readingSd / Math.sqrt(places.length);
    const means = this.perShop(this.every, undefined, (after) => {
      let sum = 0;
      for (const place of places) sum += after[place]!;
      return sum / places.length;
    });
    return means.map((mean, shop) => mean + sd * this.floor.gaugeError[shop]!);
  }

  private perShop(
    shops: Int32Array,
    cut: FurtherCut | undefined,
    of: (after: Float64Array) => number,
  ): Float64Array {
    const parts = cut && this.partsOf(cut);
    const cap = cut === undefined ? 0 : this.capOf(cut);
    const values = new Float64Array(shops.length);
    for (let i = 0; i < shops.length; i += 1) values[i] = of(this.filled(shops[i]!, cut, parts, cap));
    return values;
  }

  private extremes(
    shops: Int32Array,
    cut: FurtherCut | undefined,
  ): { readonly low: Float64Array; readonly high: Float64Array } {
    const { must } = this.demand;
    const low = new Float64Array(shops.length);
    let at = 0;
    const high = this.perShop(shops, cut, (after) => {
      let [least, most] = [Number.POSITIVE_INFINITY, 0];
      for (let place = 0; place < after.length; place += 1) {
        const depth = after[place]!;
        if (depth < least && must[place]) least = depth;
        if (depth > most) most = depth;
      }
      low[at] = least;
      at += 1;
      return most;
    });
    return { low, high };
  }

  /** Depths of one shop after a cut, in a list that the next question writes anew. */
  private filled(
    shop: number,
    cut: FurtherCut | undefined,
    parts: Float64Array | undefined,
    cap: number,
  ): Float64Array {
    const { depth, after, places } = this;
    const o = shop * places;
    if (cut === undefined || parts === undefined) {
      for (let place = 0; place < places; place += 1) after[place] = depth[o + place]!;
      return after;
    }
    const { share } = this.demand;
    const { lift, power } = this.floor;
    const middle = Math.exp(lift[shop]! - power[shop]! * Math.log(cut.travel));
    for (let place = 0; place < places; place += 1) {
      const own = middle * parts[o + place]!;
      after[place] = depth[o + place]! + share[place]! * (own < cap ? own : cap);
    }
    return after;
  }

  /** What the passes of a cut take off together at each place, in parts of what one does in the middle. */
  private partsOf({ first, passes }: FurtherCut): Float64Array {
    const key = `${first}/${passes}`;
    const known = this.parts.get(key);
    if (known !== undefined) return known;
    const sum = this.floor.further(first).slice();
    for (let pass = 1; pass < passes; pass += 1) {
      const own = this.floor.further(first + pass);
      for (let i = 0; i < sum.length; i += 1) sum[i]! += own[i]!;
    }
    this.parts.set(key, sum);
    return sum;
  }

  private capOf({ passes, travel }: FurtherCut): number {
    return passes * this.demand.ceiling(travel);
  }
}

function lnMoments(values: Float64Array): { readonly mean: number; readonly sd: number } {
  let [sum, square] = [0, 0];
  for (const value of values) {
    const ln = Math.log(Math.max(NONE, value));
    sum += ln;
    square += ln * ln;
  }
  const mean = sum / values.length;
  return { mean, sd: Math.sqrt(Math.max(1e-12, square / values.length - mean * mean)) };
}
