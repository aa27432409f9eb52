import { metalOf } from '../material/index.ts';
import { mixtureProbability, mixtureQuantile, type NormalPart, normalQuantile } from '../numeric/index.ts';
import { lnDepthParts, type RemovalBelief } from '../removal/index.ts';
import { crpsOfMixture } from './crps.ts';
import { beliefOfFamily, learnFrom } from './knowledge.ts';
import { layersTogether } from './layers-together.ts';
import type { GaugedPass, ShopObservation } from './observation.ts';

/** One entry as it was predicted from the entries before it, and as it was then measured. */
export interface ScoredEntry {
  readonly id: string;
  readonly date: string;
  /** 5th, 50th and 95th percentile of the mean depth that would be read [m]. */
  readonly predicted: readonly [number, number, number];
  /** Mean depth read [m]. */
  readonly measured: number;
  /** Share of the prediction below what was measured: even between 0 and 1 where predictions are honest [-]. */
  readonly place: number;
  /** Continuous ranked probability score of ln depth; less is better [-]. */
  readonly crps: number;
}

/** Where readings drift away from predictions. */
export interface Drift {
  /** Largest sum of standardised residuals above or below the allowance so far, the sign its direction [-]. */
  readonly sum: number;
  /** Sum at which it is called a drift [-]. */
  readonly limit: number;
  /** Entry since which it has built up, where the limit is passed. */
  readonly since?: string;
}

/** How the latest entries came out against what was predicted. */
export interface Shift {
  /** Latest entries in a row that came out on the same side of their median [-]. */
  readonly entries: number;
  /** Their mean depth less the one predicted, the sign its direction [m]. */
  readonly by: number;
}

/** Cusum allowance and limit, in standard deviations: a shift of one is found in about ten entries. */
const ALLOWANCE = 0.5;
const LIMIT = 5;
/** Residuals count this much at most, so that one bad reading is no drift. */
const FAR = 3;

/**
 * Scores the predictions that would have been made before each entry was measured, from the entries before it.
 *
 * @param shop - name of the shop [text], any
 * @param observations - entries in the order of their days [list], each pass with readings
 * @returns one score to each entry [list]
 * @source Gneiting and Raftery, JASA 102 (2007) 359-378 (memory): proper scores; Dawid 1984: prequential
 * @example
 * scoreEntries('yard', []) // => []
 */
export function scoreEntries(shop: string, observations: readonly ShopObservation[]): ScoredEntry[] {
  return observations.map((entry, index) => {
    const known = learnFrom({ shop, id: '', observations: observations.slice(0, index) });
    const belief = beliefOfFamily(known, metalOf(entry.family.metal), entry.family);
    const [{ setting, stations }] = entry.passes as [GaugedPass];
    const measured = stations.reduce((sum, { depth }) => sum + depth, 0) / stations.length;
    const parts = meanParts(lnTogether(belief, entry), entry, known);
    const ln = Math.log(Math.max(1e-4, measured) / setting.diameter);
    const at = (share: number): number => setting.diameter * Math.exp(mixtureQuantile(parts, share));
    return {
      id: entry.id,
      date: entry.date,
      predicted: [at(0.05), at(0.5), at(0.95)],
      measured,
      place: mixtureProbability(parts, ln),
      crps: crpsOfMixture(parts, ln),
    };
  });
}

/** ln of the depth over the diameter that the first pass takes off, those under it gauged with it included. */
function lnTogether(belief: RemovalBelief, { passes, meltingEnergy }: ShopObservation): NormalPart[] {
  const [{ setting, below = [] }] = passes as [GaugedPass];
  const settings = [...below, setting];
  const { parts, toOne, share } = layersTogether(settings, meltingEnergy);
  const each = settings.map((one) => lnDepthParts(belief, one));
  return belief.depth.map(({ weight, levels }, node) => {
    const over = (of: (part: NormalPart) => number): number =>
      parts.reduce((sum, part, pass) => sum + part * of(each[pass]![node]!), 0);
    return {
      weight,
      mean: over(({ mean }) => mean) - toOne,
      variance: over(({ variance }) => variance) - (1 - share) * (levels.pass ** 2 + levels.seam ** 2),
    };
  });
}

/** The mean over the stations of the first pass: seam process and gauge average out, what they have in common stays. */
function meanParts(
  parts: readonly NormalPart[],
  { passes, gaugeSd, meltingEnergy }: ShopObservation,
  known: ReturnType<typeof learnFrom>,
): NormalPart[] {
  const [{ stations, setting, below = [] }] = passes as [GaugedPass];
  const { share } = layersTogether([...below, setting], meltingEnergy);
  const count = stations.length;
  return parts.map((part, i) => {
    const { seam } = known.depth.learned.nodes[i]!.sds;
    // Stations stand farther apart than the range of the process, so that they are taken as apart.
    const depth = setting.diameter * Math.exp(part.mean);
    return {
      ...part,
      variance: part.variance - share * seam ** 2 * (1 - 1 / count) + (gaugeSd / depth) ** 2 / count,
    };
  });
}

/**
 * Watches the standardised residuals of predictions for a drift: a new batch, a worn nozzle.
 *
 * @param entries - scored entries in the order of their days [list], from `scoreEntries`
 * @returns the two-sided cumulative sum and whether it passes its limit [record]
 * @source cumulative sum chart, Montgomery, Introduction to Statistical Quality Control, chapter 9 (memory): allowance 0.5, limit 5; residuals cut at 3: judgement
 * @example
 * driftOf([]).sum // => 0
 */
export function driftOf(entries: readonly ScoredEntry[]): Drift {
  const sides = [1, -1].map((side) => {
    let [sum, most] = [0, 0];
    let start: string | undefined;
    let since: string | undefined;
    for (const { id, place } of entries) {
      const z =
        side * Math.max(-FAR, Math.min(FAR, normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, place)))));
      if (sum === 0) start = id;
      sum = Math.max(0, sum + z - ALLOWANCE);
      most = Math.max(most, sum);
      if (sum > LIMIT) since ??= start;
    }
    return { sum: side * most, since };
  });
  const [up, down] = sides as [(typeof sides)[number], (typeof sides)[number]];
  const worse = Math.abs(up.sum) >= Math.abs(down.sum) ? up : down;
  return { sum: worse.sum, limit: LIMIT, ...(worse.since !== undefined && { since: worse.since }) };
}

/**
 * How the latest entries came out: how many in a row on the same side of what was predicted, and by how much.
 *
 * @param entries - scored entries in the order of their days [list], from `scoreEntries`
 * @returns the entries in a row and their mean distance from the median [record]
 * @source definition
 * @example
 * shiftOf([]).entries // => 0
 */
export function shiftOf(entries: readonly ScoredEntry[]): Shift {
  const off = entries.map(({ measured, predicted }) => measured - predicted[1]);
  const side = Math.sign(off.at(-1) ?? 0);
  const other = off.findLastIndex((each) => Math.sign(each) !== side);
  const row = off.slice(other + 1);
  return {
    entries: row.length,
    by: row.length === 0 ? 0 : row.reduce((sum, each) => sum + each, 0) / row.length,
  };
}
