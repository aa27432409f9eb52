import { drawStream, normalProbability } from '../../numeric/index.ts';
import type { SeamPosterior } from './fuse-seam.ts';

/** What is said of a stretch of the seam. */
export type SeamVerdict = 'holds' | 'in_doubt' | 'fails';

/** Depths that the groove must keep to. */
export interface DepthBand {
  /** Least depth [m]. */
  readonly least: number;
  /** Greatest depth, of tolerance and plate left the smaller [m]. */
  readonly most: number;
}

/** A depth along the seam as prediction and readings leave it: its logarithm is Gaussian. */
export interface SeamDepth {
  /** Median of the prediction at each place of the posterior [m]. */
  readonly median: readonly number[];
  /** ln of the depth over that median. */
  readonly posterior: SeamPosterior;
}

/** A stretch of the seam with one verdict. */
export interface Stretch {
  /** Where it begins [m]. */
  readonly from: number;
  /** Where it ends [m]. */
  readonly to: number;
  readonly verdict: SeamVerdict;
  /** The same by simple acceptance: the best estimate alone. */
  readonly simple: 'holds' | 'fails';
  /** What is wrong where it does not hold; of several the one that is most likely. */
  readonly miss: 'none' | 'shallow' | 'deep';
  /** Chance that it is out of the band somewhere, were it accepted [-]. */
  readonly wrongAccept: number;
  /** Chance that it is inside the band everywhere, were it rejected [-]. */
  readonly wrongReject: number;
  /** Of a fault that readings alone tell of: how much of it lies beyond the outermost of them; undefined elsewhere. */
  readonly unseen?: UnseenEnds;
}

/** How much of a fault lies before its first reading and after its last, where nobody has looked. */
export interface UnseenEnds {
  /** Before the first [m]. */
  readonly before: number;
  /** After the last [m]. */
  readonly after: number;
}

/** Chance of accepting what is out of the band, or rejecting what is in it, that is borne [-]. */
export const RISK_BORNE = 0.05;

/** The decision rule, by name. */
export const RULE =
  'Guarded acceptance and guarded rejection by the chance of conformity, 95 % (JCGM 106:2012, 8.3): a stretch holds where the chance that any of all that is said to hold lies outside the limits is at most 5 %; a place fails where the chance that it lies inside is at most 5 %; between the two it is in doubt. Beside it simple acceptance: the best estimate alone.';

/** Courses drawn to count the chances of whole stretches [-], and their seed. */
const DRAWS = 400;
const SEED = 20_106;
/** Guards tried, as chances of conformity at one place [-]. */
const GUARDS = [0.95, 0.98, 0.99, 0.995, 0.998, 0.999, 0.9995, 0.9999, 0.99999] as const;
/** Stretches shorter than this join a neighbour that is no better [m]. */
const SHORTEST = 0.02;

/** ln of a depth over the median of the prediction, at each place [list]. */
export function lnOver(limit: number, median: readonly number[]): number[] {
  return median.map((each) => Math.log(Math.max(limit, 1e-9) / each));
}

/** Chance that the depth lies inside a band at each place [list]. */
function conformity({ median, posterior }: SeamDepth, { least, most }: DepthBand): number[] {
  const low = lnOver(least, median);
  const high = lnOver(most, median);
  return posterior.mean.map((mean, i) => {
    const sd = Math.max(posterior.sd[i]!, 1e-9);
    return Math.max(0, normalProbability((high[i]! - mean) / sd) - normalProbability((low[i]! - mean) / sd));
  });
}

/**
 * Judges a seam stretch by stretch.
 *
 * The guard is the least at which everything that is said to hold is, all together, outside the limits somewhere
 * with no more than the chance borne.
 *
 * @param depth - the depth along the seam [record], from `fuseSeam`
 * @param band - depths that it must keep to [record], least below most
 * @returns the stretches from the start of the seam on [list]
 * @source JCGM 106:2012, 8.3.3 (guarded acceptance) and 8.3.4 (guarded rejection); the chances are specific risks (3.3.13, 3.3.14)
 * @example
 * const posterior = fuseSeam({ common: 0.01, course: 0.01, range: 0.25 }, [], [0, 0.1, 0.2]);
 * judgeSeam({ median: [0.012, 0.012, 0.012], posterior }, { least: 0.01, most: 0.014 })[0].verdict // => "holds"
 */
export function judgeSeam(depth: SeamDepth, band: DepthBand): readonly Stretch[] {
  const { posterior, median } = depth;
  const { at } = posterior;
  const n = at.length;
  const chance = conformity(depth, band);
  const stream = drawStream(SEED);
  const low = lnOver(band.least, median);
  const high = lnOver(band.most, median);
  const courses = Array.from({ length: DRAWS }, () => posterior.draw(stream));
  const outside = courses.map((course) =>
    Uint8Array.from(course, (value, i) => (value < low[i]! || value > high[i]! ? 1 : 0)),
  );
  const someOut = (from: number, to: number): number => {
    let count = 0;
    for (const out of outside) {
      for (let i = from; i <= to; i += 1) {
        if (out[i] === 1) {
          count += 1;
          break;
        }
      }
    }
    // a sampled course sees the places asked for only; the worst place alone is never likelier than what is told
    let worst = 0;
    for (let i = from; i <= to; i += 1) worst = Math.max(worst, 1 - chance[i]!);
    return Math.max(count / DRAWS, worst);
  };
  const together = (guard: number): number => {
    let count = 0;
    for (const out of outside) if (out.some((each, i) => each === 1 && chance[i]! >= guard)) count += 1;
    return count / DRAWS;
  };
  const guard = GUARDS.find((each) => together(each) <= RISK_BORNE) ?? 1;
  const verdictAt = (i: number): SeamVerdict =>
    chance[i]! >= guard ? 'holds' : chance[i]! <= RISK_BORNE ? 'fails' : 'in_doubt';
  const runs: { from: number; to: number; verdict: SeamVerdict }[] = [];
  for (let i = 0; i < n; i += 1) {
    const verdict = verdictAt(i);
    const last = runs.at(-1);
    if (last?.verdict === verdict) last.to = i;
    else runs.push({ from: i, to: i, verdict });
  }
  const joined = joinShort(runs, at);
  return joined.map(({ from, to, verdict }, k) => {
    const wrongAccept = someOut(from, to);
    const middle = posterior.mean.slice(from, to + 1);
    const short = Math.max(...middle.map((mean, i) => low[from + i]! - mean));
    const over = Math.max(...middle.map((mean, i) => mean - high[from + i]!));
    const miss = verdict === 'holds' ? 'none' : short > over ? 'shallow' : 'deep';
    return {
      from: k === 0 ? at[0]! : (at[from]! + at[from - 1]!) / 2,
      to: k === joined.length - 1 ? at[n - 1]! : (at[to]! + at[to + 1]!) / 2,
      verdict,
      simple: short <= 0 && over <= 0 ? 'holds' : 'fails',
      miss,
      wrongAccept,
      wrongReject: 1 - wrongAccept,
    };
  });
}

const WORSE: readonly SeamVerdict[] = ['holds', 'in_doubt', 'fails'];

/** Joins stretches that are too short to act on to a neighbour, the worse verdict counting. */
function joinShort<T extends { from: number; to: number; verdict: SeamVerdict }>(
  runs: readonly T[],
  at: readonly number[],
): T[] {
  const out: T[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    const length = at[run.to]! - at[run.from]!;
    const lastLength = last === undefined ? 0 : at[last.to]! - at[last.from]!;
    if (last !== undefined && (length < SHORTEST || lastLength < SHORTEST)) {
      last.to = run.to;
      if (WORSE.indexOf(run.verdict) > WORSE.indexOf(last.verdict)) last.verdict = run.verdict;
    } else if (last !== undefined && last.verdict === run.verdict) last.to = run.to;
    else out.push({ ...run });
  }
  return out;
}

/** A place where a reading alone is out of the band, apart from all around it. */
export interface FaultSpot {
  /** Where it begins to be taken for the reading's [m]. */
  readonly from: number;
  /** Where it ends to be so [m]. */
  readonly to: number;
  readonly miss: 'shallow' | 'deep';
  /** Chance that the depth read is inside the band all the same [-]. */
  readonly chanceInside: number;
  readonly unseen: UnseenEnds;
}

/**
 * Lays faults at single places over the stretches of a seam: a gap left by an arc that was out is no part of the
 * course of the depth, and is judged by its reading alone.
 *
 * @param stretches - the stretches [list], rising, from `judgeSeam`
 * @param spots - the places [list], rising and apart from each other
 * @returns stretches with each spot as one that fails [list]
 * @source JCGM 106:2012, 8.3.4 (guarded rejection) by the reading alone
 * @example
 * const whole = { from: 0, to: 1, verdict: 'holds', simple: 'holds', miss: 'none', wrongAccept: 0.01, wrongReject: 0.99 };
 * spotFaults([whole], [{ from: 0.4, to: 0.6, miss: 'shallow', chanceInside: 0, unseen: { before: 0.1, after: 0.1 } }]).map(({ verdict }) => verdict) // => ["holds","fails","holds"]
 */
export function spotFaults(stretches: readonly Stretch[], spots: readonly FaultSpot[]): readonly Stretch[] {
  let out = [...stretches];
  for (const { from, to, miss, chanceInside, unseen } of spots) {
    const cut = out.flatMap((stretch): Stretch[] =>
      stretch.to <= from || stretch.from >= to
        ? [stretch]
        : [
            ...(stretch.from < from ? [{ ...stretch, to: from }] : []),
            ...(stretch.to > to ? [{ ...stretch, from: to }] : []),
          ],
    );
    const fault: Stretch = {
      from,
      to,
      verdict: 'fails',
      simple: 'fails',
      miss,
      wrongAccept: 1 - chanceInside,
      wrongReject: chanceInside,
      unseen,
    };
    out = [...cut, fault].sort((a, b) => a.from - b.from);
  }
  return out;
}
