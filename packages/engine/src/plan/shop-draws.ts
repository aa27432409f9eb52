import { drawStream, stratifiedNormals } from '../numeric/index.ts';
import type { LevelNode, RemovalBelief } from '../removal/index.ts';
import { type SeamPaths, seamPathsOf } from './seam-paths.ts';

/** Standard deviation of the depth factor of later passes in a track, about 1 [-] (judgement, no source). */
export const LATER_PASS_SD = 0.1;

/**
 * Many possible shops: what is common to all passes of a job, one value per shop, and what differs from pass to pass.
 * Every candidate meets the same shops, so that differences between candidates are theirs.
 */
export interface ShopDraws {
  /** How many shops [-]. */
  readonly count: number;
  /** Level of the depth law, family and job together [-]. */
  readonly level: Float64Array;
  /** Slope of the depth law [-]. */
  readonly slope: Float64Array;
  /** Angle coefficient of the depth law [-]. */
  readonly angle: Float64Array;
  /** Standard deviation of one pass in ln depth [-]. */
  readonly passSd: Float64Array;
  /** Standard deviation of the process along the seam in ln depth [-]. */
  readonly seamSd: Float64Array;
  /** Width less the electrode diameter, never below 0 [m]. */
  readonly extraWidth: Float64Array;
  /** Depth factor of later passes in a track [-]. */
  readonly laterFactor: Float64Array;
  /** Electrode volume burnt per ampere-second [m3/(A s)]. */
  readonly wear: Float64Array;
  /** Standard normal draws of this series, one per shop. */
  readonly normals: (series: number) => Float64Array;
  /** Courses of the process along a length of seam, shared out over the shops by `pathOf`. */
  readonly paths: (length: number) => SeamPaths;
  /** A list of one value per shop by its name, kept from the first time that it is made. */
  readonly kept: (name: string, make: (shop: number) => number) => Float64Array;
}

/** Series of standard normals: passes from 0 on, then what belongs to readings. */
export const SERIES = { trialPass: 900, trialSeam: 901, trialGauge: 902, gauge: 1000, beside: 2000 } as const;

/** Seeds of the series lie this far apart, so that none meets another. */
const SERIES_STRIDE = 7919;
const PATH_SERIES = 5003;
/** Lists kept per set of shops: what depends on the way alone is the same at every depth that it is aimed at [-]. */
const KEPT_MOST = 200;
/** Courses drawn per length: few, as every pass meets them in another order [-]. */
const PATHS_MOST = 1024;

/**
 * Draws shops from what is known of removal; the same seed gives the same shops.
 *
 * @param belief - what is known of removal [record], from `publishedBelief`
 * @param count - how many shops [-], at least 1
 * @param seed - the seed [-], a whole number from 0 to 2^31 - 1
 * @returns the shops [record]
 * @source derived: stratified draws from the weighted normal nodes of the belief
 * @example
 * drawShops(publishedBelief(metalOf('carbon_steel'), 'flat'), 3, 1).level.length // => 3
 */
export function drawShops(belief: RemovalBelief, count: number, seed: number): ShopDraws {
  const stream = drawStream(seed);
  const nodes = sharedOut(belief.depth, count, stream.uniform());
  const normals = [0, 1, 2, 3].map(() => stratifiedNormals(stream, count));
  const factors = belief.depth.map(({ covariance }) => lowerFactor(covariance));
  const law = [0, 1, 2].map((row) =>
    Float64Array.from({ length: count }, (_, shop) => {
      const node = nodes[shop]!;
      const factor = factors[node]![row]!;
      const own = belief.depth[node]!.mean[row]!;
      return (
        own +
        factor[0]! * normals[0]![shop]! +
        factor[1]! * normals[1]![shop]! +
        factor[2]! * normals[2]![shop]!
      );
    }),
  );
  const ofNode = (key: 'job' | 'pass' | 'seam'): Float64Array =>
    Float64Array.from(nodes, (node) => belief.depth[node]!.levels[key]);
  const jobSd = ofNode('job');
  const extraWidth = drawLevel(belief.extraWidth, count, stream);
  const laterFactor = stratifiedNormals(stream, count).map((z) => Math.max(0.1, 1 + LATER_PASS_SD * z));
  const wear = drawLevel(belief.wear, count, stream).map(Math.exp);
  const made = new Map<number, Float64Array>();
  const lists = new Map<string, Float64Array>();
  let latest: { readonly length: number; readonly paths: SeamPaths } | undefined;
  return {
    count,
    level: law[0]!.map((value, shop) => value + jobSd[shop]! * normals[3]![shop]!),
    slope: law[1]!,
    angle: law[2]!,
    passSd: ofNode('pass'),
    seamSd: ofNode('seam'),
    extraWidth: extraWidth.map((value) => Math.max(0, value)),
    laterFactor,
    wear,
    normals: (series) => {
      const known = made.get(series);
      if (known !== undefined) return known;
      const fresh = stratifiedNormals(drawStream((seed + (series + 1) * SERIES_STRIDE) % 2 ** 31), count);
      made.set(series, fresh);
      return fresh;
    },
    paths: (length) => {
      if (latest?.length === length) return latest.paths;
      const paths = seamPathsOf(
        length,
        belief.seamRange,
        Math.min(count, PATHS_MOST),
        (seed + PATH_SERIES) % 2 ** 31,
      );
      latest = { length, paths };
      return paths;
    },
    kept: (name, make) => {
      const known = lists.get(name);
      if (known !== undefined) return known;
      const fresh = new Float64Array(count);
      for (let shop = 0; shop < count; shop += 1) fresh[shop] = make(shop);
      if (lists.size >= KEPT_MOST) lists.clear();
      lists.set(name, fresh);
      return fresh;
    },
  };
}

/**
 * Which course of so many a shop meets in the pass of this series: another order for every series.
 *
 * @param series - number of the series [-], 0 or more
 * @param shop - number of the shop [-], from 0
 * @param count - how many courses there are [-], at least 1
 * @returns number of the course [-], below `count`
 * @source none: bookkeeping
 * @example
 * pathOf(1, 2, 128) // => 11
 */
export function pathOf(series: number, shop: number, count: number): number {
  return (shop * (2 * series + 1) + Math.floor(shop / count) * 37 + series * 389) % count;
}

/** Shares weighted nodes out over the shops, in turn so that every stretch of shops has them all. */
function sharedOut(nodes: readonly { readonly weight: number }[], count: number, start: number): Int32Array {
  const golden = (Math.sqrt(5) - 1) / 2;
  const edges: number[] = [];
  nodes.reduce((sum, { weight }) => {
    edges.push(sum + weight);
    return sum + weight;
  }, 0);
  return Int32Array.from({ length: count }, (_, shop) => {
    const place = (start + shop * golden) % 1;
    const node = edges.findIndex((edge) => place < edge);
    return node < 0 ? nodes.length - 1 : node;
  });
}

/** Draws one value per shop of a quantity without a law: family, job and pass. */
function drawLevel(
  nodes: readonly LevelNode[],
  count: number,
  stream: ReturnType<typeof drawStream>,
): Float64Array {
  const node = sharedOut(nodes, count, stream.uniform());
  return stratifiedNormals(stream, count).map((z, shop) => {
    const { mean, variance, job, pass } = nodes[node[shop]!]!;
    return mean + z * Math.sqrt(variance + job ** 2 + pass ** 2);
  });
}

/** Lower triangular factor of a covariance: a row of zeros where nothing is in doubt. */
function lowerFactor(covariance: readonly (readonly number[])[]): number[][] {
  const factor = covariance.map((row) => row.map(() => 0));
  covariance.forEach((row, r) => {
    for (let c = 0; c <= r; c += 1) {
      let left = row[c]!;
      for (let k = 0; k < c; k += 1) left -= factor[r]![k]! * factor[c]![k]!;
      if (r === c) factor[r]![c] = Math.sqrt(Math.max(0, left));
      else factor[r]![c] = factor[c]![c]! > 0 ? left / factor[c]![c]! : 0;
    }
  });
  return factor;
}
