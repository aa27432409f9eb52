import { findDeepest } from './deepest.ts';
import { type Edge, findEdge } from './edge.ts';
import { type GrooveFrame, grooveFrame, inFrame } from './groove-frame.ts';
import { findPlate, type PlateFinding, type PlateLine } from './plate-line.ts';
import { declined, degreesOf, type Measured, measured } from './quantity.ts';
import { rootRadius } from './root.ts';
import { pointsOf, type SectionScan } from './scan.ts';
import { wallAngle } from './wall.ts';

/** What one scanned section says of the groove; SI, each quantity with its expanded uncertainty (95 %) or why it is declined. */
export interface Section {
  /** Place along the seam, where it is known [m]. */
  readonly station: number | undefined;
  /** Largest distance below the plate line, square to it [m]. */
  readonly depth: Measured;
  /** Distance along the plate line between the points where the groove leaves it [m]. */
  readonly width: Measured;
  /** Radius of the arc at the root [m]. */
  readonly rootRadius: Measured;
  /** Angle of the left wall against the square to the plate line [rad]. */
  readonly wallLeft: Measured;
  /** The same of the right wall [rad]. */
  readonly wallRight: Measured;
  /** Area between plate line and groove [m2]. */
  readonly area: Measured;
  /** Right plate above the left one, square to them; below 0 where it lies lower [m]. */
  readonly plateStep: Measured;
  /** Slope of the plates in the scan; above 0 where they rise to the right [rad]. */
  readonly tilt: Measured;
  readonly points: SectionPoints;
  /** What is remarkable about the scan, in words. */
  readonly remarks: readonly string[];
  /** The points that count, in the frame of the plate line, from the middle of the groove; undefined without a plate line. */
  readonly outline: SectionOutline | undefined;
}

/** What became of the points of a section. */
export interface SectionPoints {
  /** Points of the scan [-]. */
  readonly read: number;
  /** Points without a value [-]. */
  readonly missing: number;
  /** Rows of the points that were found to be wild, from 1 [-]. */
  readonly outliers: readonly number[];
}

/** A groove as it was measured, to be drawn over the wanted one. */
export interface SectionOutline {
  /** Place along the plate line from the middle between the edges, or from the deepest point without them [m]. */
  readonly offset: Float64Array;
  /** Depth below the plate line [m]. */
  readonly depth: Float64Array;
  /** The wild points in the same frame. */
  readonly wild: readonly WildPoint[];
}

/** A wild point in the frame of the plate line. */
export interface WildPoint {
  /** Place along the plate line, as of the others [m]. */
  readonly offset: number;
  /** Depth below the plate line [m]. */
  readonly depth: number;
}

/** How a section is measured. */
export interface SectionOptions {
  /** Standard uncertainty of a length by the scanner itself, from its check or study; left out: none is added [m]. */
  readonly instrumentU?: number;
  /** Cutoff of the Gaussian filter of ISO 16610-21 by which the profile is smoothed first; left out: as scanned [m]. */
  readonly filterCutoff?: number;
}

const WHY: Readonly<Record<Exclude<PlateFinding['kind'], 'plate' | 'one_shoulder'>, string>> = {
  few: 'too few points',
  no_groove: 'no groove in the scan',
  no_plate: 'the groove is wider than the scan: it shows no plate beside the groove',
  upside_down:
    'the scan stands up where a groove would fall: it is upside down, or holds ranges from the sensor in place of heights',
};

/** Part of the width that must be back at the surface between two lobes to make them two grooves [-]. */
const BETWEEN = 0.05;
/** Part of the area that a gap may leave open [-]. */
const AREA_OPEN = 0.05;

/**
 * Measures one scanned section of a groove.
 *
 * The plate line is fitted robustly to both shoulders. Wild points are marked, missing ones counted. What the scan
 * does not show is declined with the reason, never guessed.
 *
 * @param scan - the points [record], heights upwards
 * @param options - what is known of the scanner [record], any; left out: nothing
 * @returns the quantities [record]
 * @source plate line, walls: robust least squares with Tukey's weights; root: `geometricCircle`; uncertainty: JCGM 100:2008 (GUM), 5.1.2
 * @example
 * const across = Float64Array.from({ length: 801 }, (_, i) => (i - 400) * 5e-5);
 * const height = across.map((y, i) => Math.min(0, Math.abs(y) - 0.008) + 1e-5 * ((i * 7) % 5 - 2));
 * measureSection({ across, height }).width.value // => 0.01600...
 */
export function measureSection(scan: SectionScan, options: SectionOptions = {}): Section {
  const points = pointsOf(scan, options.filterCutoff);
  const found = findPlate(points);
  const rowOf = (i: number): number => scan.rows?.[i] ?? i + 1;
  const counted = (outliers: readonly number[]): SectionPoints => ({
    read: scan.across.length,
    missing: points.missing,
    outliers: [...new Set(outliers.map(rowOf))].sort((a, b) => a - b),
  });
  if (found.kind !== 'plate') {
    const why =
      found.kind === 'one_shoulder' ? `only the ${found.side} shoulder is in the scan` : WHY[found.kind];
    return nothing(scan, why, counted([]));
  }
  const { line } = found;
  const frame = grooveFrame(points, line);
  const [first, last] = coreOf(frame, line);
  const deepest = first < last ? findDeepest(frame, first, last) : undefined;
  if (deepest === undefined) return nothing(scan, WHY.few, counted(frame.outliers));
  const left = findEdge(frame, deepest.at, deepest.depth, -1);
  const right = findEdge(frame, deepest.at, deepest.depth, 1);
  if (left === undefined || right === undefined) return nothing(scan, WHY.no_plate, counted(frame.outliers));
  if (isTwoGrooves(frame, line, deepest.depth))
    return nothing(scan, 'two grooves in one scan: cut it into one scan for each', counted(frame.outliers));

  const instrument = options.instrumentU ?? 0;
  const slopeVariance = line.covariance[0]![0]! / (1 + line.slope ** 2) ** 2;
  const width = right.u - left.u;
  const root = rootRadius(frame, deepest, left.inside, right.inside, width);
  const bottomGap = gapAt(frame, deepest.at);
  const openRoot = bottomGap > 0.25 * width;
  const wall = (edge: Edge, side: -1 | 1): Measured =>
    edge.shadow
      ? declined('points are missing on the wall: it lies in shadow')
      : wallAngle(frame, edge.inside, deepest.at, deepest.depth, side, slopeVariance);
  const shadows = [left.shadow ? 'left' : '', right.shadow ? 'right' : ''].filter((side) => side !== '');
  const remarks = [
    ...(shadows.length > 0 ? [`The ${shadows.join(' and ')} wall lies in shadow.`] : []),
    ...(openRoot ? ['Points are missing at the root.'] : []),
  ];
  const middle = (left.u + right.u) / 2;
  return {
    station: scan.station,
    depth: openRoot
      ? declined('points are missing where the groove is deepest')
      : measured(
          deepest.depth,
          Math.sqrt(deepest.variance + plateVarianceAt(line, deepest.u) + instrument ** 2),
          degreesOf([
            deepest,
            { variance: plateVarianceAt(line, deepest.u), degrees: line.degrees },
            { variance: instrument ** 2, degrees: Number.POSITIVE_INFINITY },
          ]),
        ),
    width:
      shadows.length > 0
        ? declined(
            shadows.length === 2
              ? 'both walls lie in shadow'
              : `the ${shadows[0]} wall lies in shadow: the width is seen from one side only`,
          )
        : measured(
            width,
            Math.hypot(widthU(line, left, right), instrument),
            degreesOf([left, right, { variance: instrument ** 2, degrees: Number.POSITIVE_INFINITY }]),
          ),
    rootRadius: withInstrument(root.radius, instrument),
    wallLeft: wall(left, -1),
    wallRight: wall(right, 1),
    area: areaOf(frame, line, left, right, instrument),
    plateStep: stepOf(line, instrument),
    tilt: measured(Math.atan(line.slope), Math.sqrt(slopeVariance), line.degrees),
    points: counted([...frame.outliers, ...root.outliers]),
    remarks,
    outline: {
      offset: frame.u.map((u) => u - middle),
      depth: frame.d,
      wild: wildOf(scan, line, middle, [...frame.outliers, ...root.outliers]),
    },
  };
}

/** Wild points in the frame of the plate line. */
function wildOf(
  { across, height }: SectionScan,
  line: PlateLine,
  middle: number,
  outliers: readonly number[],
): readonly WildPoint[] {
  return [...new Set(outliers)].map((i) => {
    const { u, d } = inFrame(line, across[i]!, height[i]!);
    return { offset: u - middle, depth: d };
  });
}

function withInstrument(quantity: Measured, instrument: number): Measured {
  return 'declined' in quantity
    ? quantity
    : { value: quantity.value, u95: Math.hypot(quantity.u95, 1.959964 * instrument) };
}

function nothing(scan: SectionScan, why: string, points: SectionPoints): Section {
  const none = declined(why);
  return {
    station: scan.station,
    depth: none,
    width: none,
    rootRadius: none,
    wallLeft: none,
    wallRight: none,
    area: none,
    plateStep: none,
    tilt: none,
    points,
    remarks: [],
    outline: undefined,
  };
}

/** Indices of the frame between the inner ends of the shoulders. */
function coreOf({ u }: GrooveFrame, line: PlateLine): [number, number] {
  const [low, high] = line.inner.map((y) => (y - line.centre) * Math.hypot(1, line.slope));
  let first = 0;
  while (first < u.length - 1 && u[first]! < low!) first += 1;
  let last = u.length - 1;
  while (last > 0 && u[last]! > high!) last -= 1;
  return [first, last];
}

/** Variance of the plate line's height, square to it, at a place. */
function plateVarianceAt(line: PlateLine, u: number): number {
  const cosine = 1 / Math.hypot(1, line.slope);
  const t = u * cosine;
  const g = [t, 0.5, 0.5];
  let sum = 0;
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1) sum += g[i]! * line.covariance[i]![j]! * g[j]!;
  return sum * cosine * cosine;
}

/** Uncertainty of the width: of both edges, and of the line that they are read on. */
function widthU(line: PlateLine, left: Edge, right: Edge): number {
  const cosine = 1 / Math.hypot(1, line.slope);
  // an edge moves with its own shoulder by one over the wall's slope
  const g = [
    (left.u / Math.max(left.slope, 0.02) - right.u / Math.max(right.slope, 0.02)) * cosine,
    1 / Math.max(left.slope, 0.02),
    1 / Math.max(right.slope, 0.02),
  ];
  let sum = 0;
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1) sum += g[i]! * line.covariance[i]![j]! * g[j]!;
  return Math.sqrt(sum * cosine * cosine + left.variance + right.variance);
}

function stepOf(line: PlateLine, instrument: number): Measured {
  const cosine = 1 / Math.hypot(1, line.slope);
  const c = line.covariance;
  const variance = c[1]![1]! + c[2]![2]! - 2 * c[1]![2]!;
  return measured(
    (line.right - line.left) * cosine,
    Math.hypot(Math.sqrt(variance) * cosine, instrument),
    line.degrees,
  );
}

/** Gap between the neighbours of the deepest point [m]. */
function gapAt({ u }: GrooveFrame, at: number): number {
  return Math.max(u[at]! - u[Math.max(0, at - 1)]!, u[Math.min(u.length - 1, at + 1)]! - u[at]!);
}

/** Whether the surface comes back between two lobes of a groove. */
function isTwoGrooves(frame: GrooveFrame, line: PlateLine, depth: number): boolean {
  const [first, last] = coreOf(frame, line);
  const { u, smooth, noise } = frame;
  const back = Math.max(4 * noise, 0.05 * depth);
  let start: number | undefined;
  let before = false;
  for (let i = first; i <= last; i += 1) {
    if (smooth[i]! < back) {
      start ??= i;
    } else {
      if (
        start !== undefined &&
        before &&
        i - start >= 4 &&
        u[i - 1]! - u[start]! > BETWEEN * (u[last]! - u[first]!) &&
        someDeeper(smooth, i, last, 0.25 * depth)
      )
        return true;
      start = undefined;
      if (smooth[i]! > 0.25 * depth) before = true;
    }
  }
  return false;
}

function someDeeper(smooth: Float64Array, from: number, to: number, level: number): boolean {
  for (let i = from; i <= to; i += 1) if (smooth[i]! > level) return true;
  return false;
}

/** Area by the trapezium rule between the edges, with what noise, line, edges and gaps leave open. */
function areaOf(frame: GrooveFrame, line: PlateLine, left: Edge, right: Edge, instrument: number): Measured {
  const { u, d, noise, shoulder, spacing } = frame;
  let area = 0;
  let noisePart = 0;
  let open = 0;
  let openMost = 0;
  let moment = 0;
  let from = left.inside;
  while (from > 0 && u[from - 1]! > left.u) from -= 1;
  while (u[from]! < left.u) from += 1;
  let to = right.inside;
  while (to < u.length - 1 && u[to + 1]! < right.u) to += 1;
  while (u[to]! > right.u) to -= 1;
  const edgeDepth = (side: 0 | 1): number => shoulder[side];
  const add = (u0: number, d0: number, u1: number, d1: number): void => {
    const run = u1 - u0;
    area += (run * (d0 + d1)) / 2;
    moment += (run * (u0 + u1)) / 2;
    const jump = Math.abs(d1 - d0);
    if (run > 3 * spacing || jump > 20 * noise + 2 * run) {
      open += (run * jump) ** 2 / 12;
      openMost = Math.max(openMost, (run * jump) / 2);
      if (run > 6 * spacing) open += (0.05 * run * run) ** 2;
    }
  };
  add(left.u, edgeDepth(0), u[from]!, d[from]!);
  for (let i = from; i < to; i += 1) add(u[i]!, d[i]!, u[i + 1]!, d[i + 1]!);
  add(u[to]!, d[to]!, right.u, edgeDepth(1));
  for (let i = from; i <= to; i += 1) {
    const low = i === from ? left.u : u[i - 1]!;
    const high = i === to ? right.u : u[i + 1]!;
    noisePart += (((high - low) / 2) * noise) ** 2;
  }
  if (left.shadow || right.shadow || openMost > AREA_OPEN * area)
    return declined('points are missing on a wall: the area under it is not seen');
  const width = right.u - left.u;
  const cosine = 1 / Math.hypot(1, line.slope);
  const g = [moment * cosine, width / 2, width / 2];
  let plate = 0;
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1) plate += g[i]! * line.covariance[i]![j]! * g[j]!;
  return measured(
    area,
    Math.sqrt(
      noisePart +
        open +
        plate * cosine * cosine +
        shoulder[0] ** 2 * left.variance +
        shoulder[1] ** 2 * right.variance +
        (instrument * width) ** 2,
    ),
  );
}
