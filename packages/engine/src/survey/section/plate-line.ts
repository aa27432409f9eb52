import { MAD, medianOf, TUKEY } from './circle.ts';
import { inverseOf, ROBUST_VARIANCE } from './polynomial.ts';
import type { Points } from './scan.ts';

/** Bins across the scan in which the plate is looked for. */
const BINS = 80;
/** Bins of a shoulder that are tried in pairs. */
const PAIRED = 16;
/** Slope by which two shoulders may differ and still be one plate line [-]. */
const SLOPES_APART = 0.15;
/** Step between the plates, as a part of the depth, above which one shoulder is taken for the groove's own floor [-]. */
const STEP_MOST = 0.35;
/** Least depth that is a groove [m]; a scratch is none. */
const DEPTH_LEAST = 0.2e-3;

/** The plate beside the groove: z = (left or right) + slope (y - centre). */
export interface PlateLine {
  readonly slope: number;
  readonly centre: number;
  readonly left: number;
  readonly right: number;
  /** Covariance of slope, left and right. */
  readonly covariance: readonly (readonly number[])[];
  /** Degrees of freedom of that [-]. */
  readonly degrees: number;
  /** Inner ends of the two shoulders, where the groove's own points begin [m]. */
  readonly inner: readonly [number, number];
}

/** What the scan shows of the plate: its line, or why there is none. */
export type PlateFinding =
  | { readonly kind: 'plate'; readonly line: PlateLine }
  | { readonly kind: 'one_shoulder'; readonly side: 'left' | 'right' }
  | { readonly kind: 'few' | 'no_groove' | 'no_plate' | 'upside_down' };

interface Bins {
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Standard deviation of a bin's median about the plate [m]. */
  readonly spread: number;
}

interface Shoulder {
  readonly slope: number;
  readonly at: number;
  readonly height: number;
  readonly share: number;
  readonly bins: number;
}

/** Finds the plate on both sides of the groove and fits its line, robustly: burrs and walls do not pull. */
export function findPlate(points: Points): PlateFinding {
  if (points.y.length < 20) return { kind: 'few' };
  const bins = binsOf(points);
  const n = bins.y.length;
  if (n < 10) return { kind: 'few' };
  const ends = endLine(bins);
  const below = new Float64Array(n);
  for (let i = 0; i < n; i += 1) below[i] = ends.height + ends.slope * (bins.y[i]! - ends.at) - bins.z[i]!;
  const smooth = runningMedian(below, 1);
  const deepest = smooth.reduce((best, value, i) => (value > smooth[best]! ? i : best), 0);
  const highest = smooth.reduce((best, value, i) => (value < smooth[best]! ? i : best), 0);
  const least = Math.max(DEPTH_LEAST, 8 * points.noise);
  const depth = smooth[deepest]!;
  const rise = -smooth[highest]!;
  if (depth < least && rise < least) return { kind: 'no_groove' };
  if (rise > 2 * Math.max(depth, least / 2)) return standing(bins, points);
  const core = [0, n - 1];
  while (core[0]! < deepest && smooth[core[0]!]! < 0.25 * depth) core[0]! += 1;
  while (core[1]! > deepest && smooth[core[1]!]! < 0.25 * depth) core[1]! -= 1;
  const left = shoulderOf(bins, 0, core[0]! - 1);
  const right = shoulderOf(bins, core[1]! + 1, n - 1);
  if (left === undefined && right === undefined) return { kind: 'no_plate' };
  if (left === undefined) return { kind: 'one_shoulder', side: 'right' };
  if (right === undefined) return { kind: 'one_shoulder', side: 'left' };
  if (Math.abs(left.slope - right.slope) > SLOPES_APART) {
    return plateOf(left, bins) >= plateOf(right, bins)
      ? { kind: 'one_shoulder', side: 'left' }
      : { kind: 'one_shoulder', side: 'right' };
  }
  const slope = (left.slope * left.bins + right.slope * right.bins) / (left.bins + right.bins);
  const step = right.height - left.height - slope * (right.at - left.at);
  const deep = deepestUnder(bins, left, right, slope);
  if (Math.abs(step) > STEP_MOST * deep) return { kind: 'one_shoulder', side: step > 0 ? 'right' : 'left' };
  const inner: [number, number] = [bins.y[core[0]!]!, bins.y[core[1]!]!];
  const line = refine(points, inner, slope, left, right);
  return line === undefined ? { kind: 'no_plate' } : { kind: 'plate', line };
}

/** Parts of the scan, from an end inward, in which a lone shoulder is looked for [-]. */
const LONE_PARTS = [0.5, 0.3, 0.18] as const;

/** A scan in which something stands above the line through its ends: it ends in the groove, or is turned over. */
function standing(bins: Bins, { noise }: Points): PlateFinding {
  const n = bins.y.length;
  const least = Math.max(DEPTH_LEAST, 8 * noise);
  for (const part of LONE_PARTS) {
    const count = Math.floor(part * n);
    for (const side of ['left', 'right'] as const) {
      const shoulder = shoulderOf(bins, side === 'left' ? 0 : n - count, side === 'left' ? count - 1 : n - 1);
      if (shoulder === undefined || shoulder.share < 0.7) continue;
      let above = 0;
      let deepest = 0;
      for (let i = 0; i < n; i += 1) {
        const under = shoulder.height + shoulder.slope * (bins.y[i]! - shoulder.at) - bins.z[i]!;
        if (under < -Math.max(6 * bins.spread, 0.1 * least)) above += 1;
        deepest = Math.max(deepest, under);
      }
      if (above <= 0.04 * n && deepest > least) return { kind: 'one_shoulder', side };
    }
  }
  return { kind: 'upside_down' };
}

function binsOf({ y, z, noise }: Points): Bins {
  const n = y.length;
  const low = y[0]!;
  const width = (y[n - 1]! - low) / Math.min(BINS, Math.floor(n / 4));
  const ys: number[] = [];
  const zs: number[] = [];
  const sorted = z.slice();
  let from = 0;
  let counted = 0;
  while (from < n) {
    const bin = Math.floor((y[from]! - low) / width);
    let to = from + 1;
    while (to < n && Math.floor((y[to]! - low) / width) === bin) to += 1;
    if (to - from >= 2) {
      ys.push((y[from]! + y[to - 1]!) / 2);
      zs.push(medianOf(sorted.subarray(from, to)));
      counted += to - from;
    }
    from = to;
  }
  const each = Math.max(1, counted / Math.max(1, ys.length));
  return {
    y: Float64Array.from(ys),
    z: Float64Array.from(zs),
    spread: Math.max((1.25 * noise) / Math.sqrt(each), 1e-5),
  };
}

/** The line through the middles of both ends of the scan. */
function endLine({ y, z }: Bins): { at: number; height: number; slope: number } {
  const n = y.length;
  const k = Math.max(2, Math.round(n * 0.05));
  const left = medianOf(z.slice(0, k));
  const right = medianOf(z.slice(n - k));
  const at = (y[0]! + y[k - 1]!) / 2;
  const to = (y[n - k]! + y[n - 1]!) / 2;
  return { at, height: left, slope: (right - left) / (to - at) };
}

/** The straight line that most bins of a stretch lie on; undefined where they are too few. */
function shoulderOf({ y, z, spread }: Bins, from: number, to: number): Shoulder | undefined {
  const n = to - from + 1;
  if (n < 4) return undefined;
  const stride = Math.max(1, Math.ceil(n / PAIRED));
  const near = 3 * spread;
  let best: Shoulder | undefined;
  let most = -1;
  for (let i = from; i <= to; i += stride) {
    for (let j = i + Math.max(stride, Math.floor(n / 4)); j <= to; j += stride) {
      const slope = (z[j]! - z[i]!) / (y[j]! - y[i]!);
      let inside = 0;
      let far = 0;
      for (let k = from; k <= to; k += 1) {
        const away = Math.abs(z[k]! - z[i]! - slope * (y[k]! - y[i]!));
        if (away < near) {
          inside += 1;
          far += away;
        }
      }
      const score = inside - far / (near * n);
      if (score > most) {
        most = score;
        best = { slope, at: y[i]!, height: z[i]!, share: inside / n, bins: inside };
      }
    }
  }
  return best !== undefined && best.bins >= 3 ? best : undefined;
}

/** Share of all bins that do not lie above a shoulder's line, by how many lie on it: how much like a plate it is. */
function plateOf(shoulder: Shoulder, { y, z, spread }: Bins): number {
  let above = 0;
  for (let i = 0; i < y.length; i += 1) {
    if (z[i]! - shoulder.height - shoulder.slope * (y[i]! - shoulder.at) > 6 * spread) above += 1;
  }
  return shoulder.bins / y.length - (2 * above) / y.length;
}

function deepestUnder(bins: Bins, left: Shoulder, right: Shoulder, slope: number): number {
  let deepest = 0;
  for (let i = 0; i < bins.y.length; i += 1) {
    const top = Math.max(
      left.height + slope * (bins.y[i]! - left.at),
      right.height + slope * (bins.y[i]! - right.at),
    );
    deepest = Math.max(deepest, top - bins.z[i]!);
  }
  return deepest;
}

/** The line of both shoulders while it is fitted. */
interface LineFit {
  readonly slope: number;
  readonly left: number;
  readonly right: number;
  readonly inverse: readonly (readonly number[])[];
  /** Scatter of the points about it, robustly [m]. */
  readonly spread: number;
  readonly away: Float64Array;
  readonly weights: Float64Array;
}

/** Both shoulders together, one slope and a height each; then again without what stands off beside the groove. */
function refine(
  points: Points,
  inner: readonly [number, number],
  slope: number,
  left: Shoulder,
  right: Shoulder,
): PlateLine | undefined {
  const { y } = points;
  const n = y.length;
  let leftEnd = 0;
  while (leftEnd < n && y[leftEnd]! < inner[0]) leftEnd += 1;
  let rightStart = n;
  while (rightStart > 0 && y[rightStart - 1]! > inner[1]) rightStart -= 1;
  const centre = (inner[0] + inner[1]) / 2;
  const start = {
    slope,
    left: left.height + slope * (centre - left.at),
    right: right.height + slope * (centre - right.at),
  };
  const span = inner[1] - inner[0];
  const first = fitShoulders(points, leftEnd, rightStart, centre, span, start);
  if (first === undefined) return undefined;
  const burrLeft = burrOf(first, leftEnd - 1, -1, 0);
  const burrRight = burrOf(first, leftEnd, 1, first.away.length - 1);
  const clean =
    fitShoulders(points, leftEnd - burrLeft, rightStart + burrRight, centre, span, first) ?? first;
  const variance = plateVariance(clean.away, clean.weights);
  return {
    slope: clean.slope,
    left: clean.left,
    right: clean.right,
    centre,
    covariance: clean.inverse.map((row) => row.map((value) => value * variance)),
    degrees: clean.weights.reduce((sum, weight) => sum + weight, 0) - 3,
    inner,
  };
}

/** Points in whose mean a burr shows. */
const BURR_POINTS = 9;
/** Mean of so many points off the line, in its standard deviations, from which they are no plate [-]. */
const BURR_OFF = 3.3;

/** How many points beside the groove stand off the line together, up to half of the shoulder: burr and top of the wall. */
function burrOf({ away, spread }: LineFit, from: number, side: -1 | 1, end: number): number {
  const count = Math.abs(end - from) + 1;
  let off = 0;
  for (let k = 0; k + BURR_POINTS <= Math.min(count / 2, off + 3 * BURR_POINTS); k += 1) {
    let sum = 0;
    for (let j = 0; j < BURR_POINTS; j += 1)
      sum += Math.max(-6 * spread, Math.min(6 * spread, away[from + side * (k + j)]!));
    if (Math.abs(sum) > BURR_OFF * spread * Math.sqrt(BURR_POINTS)) off = k + BURR_POINTS;
  }
  return off;
}

/** Rounds of weighing at most [-]. */
const ROUNDS_MOST = 10;
/** Rounds in which the spread is taken anew [-]; held after that, since a spread that moves keeps the line moving. */
const SPREADS = 3;

/** Least squares with Tukey's weights about the median spread, from a start. */
function fitShoulders(
  { y, z, noise }: Points,
  leftEnd: number,
  rightStart: number,
  centre: number,
  span: number,
  start: { readonly slope: number; readonly left: number; readonly right: number },
): LineFit | undefined {
  const n = y.length;
  const m = leftEnd + n - rightStart;
  // the points of both shoulders side by side: places in spans from the centre
  const place = new Float64Array(m);
  const height = new Float64Array(m);
  const perSpan = 1 / span;
  for (let i = 0; i < m; i += 1) {
    const k = i < leftEnd ? i : rightStart + i - leftEnd;
    place[i] = (y[k]! - centre) * perSpan;
    height[i] = z[k]!;
  }
  const away = new Float64Array(m);
  const weights = new Float64Array(m);
  const inside = new Float64Array(m);
  let { slope, left, right } = { ...start, slope: start.slope * span };
  let scaled: number[][] | undefined;
  let spread = 0;
  // the shoulders' own lines say what is plate at first: about half of the points may be burr and wall
  let near = 8 * Math.max(noise, 1e-5);
  for (let round = 0; round < ROUNDS_MOST; round += 1) {
    for (let i = 0; i < leftEnd; i += 1) away[i] = height[i]! - left - slope * place[i]!;
    for (let i = leftEnd; i < m; i += 1) away[i] = height[i]! - right - slope * place[i]!;
    if (round < SPREADS) {
      let counted = 0;
      for (let i = 0; i < m; i += 1) {
        const off = Math.abs(away[i]!);
        inside[counted] = off;
        if (off < near) counted += 1;
      }
      if (counted < 8) return undefined;
      spread = Math.max(MAD * medianOf(inside.subarray(0, counted)), 0.3 * noise, 1e-9);
      near = TUKEY * spread;
    }
    const l = weighSide(place, away, weights, near, 0, leftEnd);
    const r = weighSide(place, away, weights, near, leftEnd, m);
    if (l.w < 4 || r.w < 4) return undefined;
    scaled = inverseOf([
      [l.tt + r.tt, l.t, r.t],
      [l.t, l.w, 0],
      [r.t, 0, r.w],
    ]);
    if (scaled === undefined) return undefined;
    const turns = l.ta + r.ta;
    const [bySlope, byLeft, byRight] = scaled.map(
      (row) => row[0]! * turns + row[1]! * l.a + row[2]! * r.a,
    ) as [number, number, number];
    slope += bySlope;
    left += byLeft;
    right += byRight;
    if (Math.abs(bySlope) + Math.abs(byLeft) + Math.abs(byRight) < 1e-3 * spread) break;
  }
  const inverse = scaled?.map((row, i) =>
    row.map((value, j) => value / ((i === 0 ? span : 1) * (j === 0 ? span : 1))),
  );
  return inverse === undefined
    ? undefined
    : { slope: slope * perSpan, left, right, inverse, spread, away, weights };
}

/** Sums over the points of a shoulder by their weights: of places, distances, squares and products. */
interface SideSums {
  readonly w: number;
  readonly t: number;
  readonly a: number;
  readonly tt: number;
  readonly ta: number;
}

/** Weighs the points of a shoulder by Tukey's biweight, and sums them up. */
function weighSide(
  place: Float64Array,
  away: Float64Array,
  weights: Float64Array,
  reach: number,
  from: number,
  to: number,
): SideSums {
  const perReach = 1 / reach;
  let [w, t, a, tt, ta] = [0, 0, 0, 0, 0];
  for (let i = from; i < to; i += 1) {
    const off = away[i]!;
    const share = off * perReach;
    const left = Math.max(0, 1 - share * share);
    const weight = left * left;
    weights[i] = weight;
    const turned = weight * place[i]!;
    w += weight;
    t += turned;
    a += weight * off;
    tt += turned * place[i]!;
    ta += turned * off;
  }
  return { w, t, a, tt, ta };
}

/** What it adds to the variance that the points of a shoulder are chosen by looking at them (from simulated scans) [-]. */
const CHOICE_VARIANCE = 1.1;

/** Variance of one shoulder point for the fit: its scatter, with the waviness of the plate that neighbours share. */
function plateVariance(away: Float64Array, weights: Float64Array): number {
  let squares = 0;
  let total = 0;
  let lag = 0;
  let pairs = 0;
  for (let i = 0; i < away.length; i += 1) {
    squares += weights[i]! * away[i]! ** 2;
    total += weights[i]!;
    if (i > 0 && weights[i]! > 0 && weights[i - 1]! > 0) {
      lag += weights[i]! * away[i]! * away[i - 1]!;
      pairs += 1;
    }
  }
  const correlation = Math.min(
    0.95,
    Math.max(0, lag / Math.max(squares, 1e-300) - 1.5 / Math.sqrt(pairs + 1)),
  );
  return (
    (squares / (total - 3)) * ROBUST_VARIANCE * CHOICE_VARIANCE * ((1 + correlation) / (1 - correlation))
  );
}

/** Running median of three (`half` 1) or five (`half` 2) neighbours; the ends use what there is. */
export function runningMedian(values: Float64Array, half: 1 | 2): Float64Array {
  const n = values.length;
  const out = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const reach = Math.min(half, i, n - 1 - i);
    if (reach === 0) out[i] = values[i]!;
    else if (reach === 1) out[i] = middle(values[i - 1]!, values[i]!, values[i + 1]!);
    else {
      const a = values[i - 2]!;
      const b = values[i - 1]!;
      const c = values[i]!;
      const d = values[i + 1]!;
      const e = values[i + 2]!;
      const low = Math.max(Math.min(a, b), Math.min(d, e));
      const high = Math.min(Math.max(a, b), Math.max(d, e));
      out[i] = middle(c, low, high);
    }
  }
  return out;
}

/** Median of three. */
function middle(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
