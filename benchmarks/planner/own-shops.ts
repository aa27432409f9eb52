import { drawStream, type RemovalBelief } from '@furrow/engine';

/** Distance between the points at which a course along the seam is followed [m]. */
const STEP = 0.025;
/** Standard deviation of the depth factor of later passes in a track [-]. */
const LATER_SD = 0.1;

/** Standard deviations below the family, in ln depth [-]. */
export interface Levels {
  readonly job: number;
  readonly pass: number;
  readonly seam: number;
}

/**
 * Simulated shops for checks of the planner: nothing here is taken from the planner's own. Every pass has a whole
 * course along its length, point by point.
 */
export interface OwnShops {
  readonly count: number;
  /** ln depth over diameter at ln specific energy 0, job included, and its rise per ln energy [-]. */
  readonly level: Float64Array;
  readonly slope: Float64Array;
  readonly later: Float64Array;
  /** Pass width less the electrode diameter [m]. */
  readonly extraWidth: Float64Array;
  /** Electrode volume burnt per ampere-second [m3/(A s)]. */
  readonly wear: Float64Array;
  readonly levels: Levels;
  /** Standard normals, a list per name. */
  readonly normals: (name: number) => Float64Array;
  /** Factors on the depth of a pass along a length, point by point, shop after shop. */
  readonly course: (name: number, length: number) => Float32Array;
}

/** Points along a length, its ends included [-]. */
export function pointsOf(length: number): number {
  return Math.max(5, Math.ceil(length / STEP) + 1);
}

/** Draws shops from the most likely standard deviations of a belief, the push angle's part already in the level. */
export function ownShops(
  belief: RemovalBelief,
  angleTerm: number,
  count: number,
  seed: number,
  levels: Levels = belief.depth[0]!.levels,
): OwnShops {
  const { mean, covariance } = belief.depth[0]!;
  const [width, burn] = [belief.extraWidth[0]!, belief.wear[0]!];
  const stream = drawStream(seed);
  const list = (draw: () => number): Float64Array => Float64Array.from({ length: count }, draw);
  const variance = (r: number, c: number): number => covariance[r]![c]!;
  // Level with the angle's part, and slope: two correlated normals.
  const levelMean = mean[0]! + angleTerm * mean[2]!;
  const levelVar = variance(0, 0) + 2 * angleTerm * variance(0, 2) + angleTerm ** 2 * variance(2, 2);
  const both = variance(0, 1) + angleTerm * variance(2, 1);
  const levelSd = Math.sqrt(levelVar);
  const rest = Math.sqrt(Math.max(0, variance(1, 1) - (levelVar > 0 ? both ** 2 / levelVar : 0)));
  const level = new Float64Array(count);
  const slope = new Float64Array(count);
  for (let shop = 0; shop < count; shop += 1) {
    const [one, two, three] = [stream.normal(), stream.normal(), stream.normal()];
    level[shop] = levelMean + levelSd * one + levels.job * three;
    slope[shop] = mean[1]! + (levelSd > 0 ? both / levelSd : 0) * one + rest * two;
  }
  const later = list(() => Math.max(0.1, 1 + LATER_SD * stream.normal()));
  const spreadOf = (node: typeof width): number => Math.sqrt(node.variance + node.job ** 2 + node.pass ** 2);
  const extraWidth = list(() => Math.max(0, width.mean + spreadOf(width) * stream.normal()));
  const wear = list(() => Math.exp(burn.mean + spreadOf(burn) * stream.normal()));
  const keptNormals = new Map<number, Float64Array>();
  const keptCourses = new Map<string, Float32Array>();
  return {
    count,
    level,
    slope,
    later,
    extraWidth,
    wear,
    levels,
    normals: (name) => {
      const known = keptNormals.get(name);
      if (known !== undefined) return known;
      const own = drawStream((seed + 6151 * (name + 1)) % 2 ** 31);
      const fresh = list(() => own.normal());
      keptNormals.set(name, fresh);
      return fresh;
    },
    course: (name, length) => {
      const key = `${name}/${length}`;
      const known = keptCourses.get(key);
      if (known !== undefined) return known;
      const points = pointsOf(length);
      const step = courseStep(belief.seamRange, length / (points - 1));
      const own = drawStream((seed + 3571 * (name + 1) + 11) % 2 ** 31);
      const fresh = new Float32Array(points * count);
      for (let shop = 0; shop < count; shop += 1) {
        let [value, slopeNow] = [own.normal(), own.normal()];
        for (let at = 0; at < points; at += 1) {
          fresh[shop * points + at] = Math.exp(levels.seam * value);
          [value, slopeNow] = step(value, slopeNow, own.normal(), own.normal());
        }
      }
      keptCourses.set(key, fresh);
      return fresh;
    },
  };
}

/** One exact step of the Matern 3/2 process, value and scaled slope, from its transition and what is left of its variance. */
function courseStep(
  range: number,
  gap: number,
): (value: number, slope: number, one: number, two: number) => [number, number] {
  const t = (Math.sqrt(3) * gap) / range;
  const e = Math.exp(-t);
  const a = [e * (1 + t), e * t, -e * t, e * (1 - t)] as const;
  const ofValue = 1 - a[0] ** 2 - a[1] ** 2;
  const ofBoth = -(a[0] * a[2] + a[1] * a[3]);
  const ofSlope = 1 - a[2] ** 2 - a[3] ** 2;
  const first = Math.sqrt(Math.max(0, ofValue));
  const pull = first > 0 ? ofBoth / first : 0;
  const rest = Math.sqrt(Math.max(0, ofSlope - pull ** 2));
  return (value, slope, one, two) => [
    a[0] * value + a[1] * slope + first * one,
    a[2] * value + a[3] * slope + pull * one + rest * two,
  ];
}
