import type { GrooveFrame } from './groove-frame.ts';
import { fitPolynomial, type PolynomialFit, polynomialAt, slopeAt, varianceAt } from './polynomial.ts';

/** Where the groove leaves the plate on one side. */
export interface Edge {
  /** Place along the plate line [m]. */
  readonly u: number;
  /** Its variance [m2]. */
  readonly variance: number;
  /** Degrees of freedom of that. */
  readonly degrees: number;
  /** Index of the outermost point that is the groove's. */
  readonly inside: number;
  /** Slope of the wall at the edge: depth over distance [-]. */
  readonly slope: number;
  /** Points are missing where the wall is: it lies in shadow. */
  readonly shadow: boolean;
}

/** Part of the depth below the edge over which the wall's top is followed up to the line [-]. */
const TOP_PART = 0.22;
/** Points from which the wall's top may be curved [-]. */
const CURVED = 9;
/** Ratio of variances from which a third order fits clearly better [-]. */
const CLEARLY = 4;
/** A gap of so many usual distances, with a fall of so much of the depth across it, is a shadow; below this part of the depth the edge is seen all the same [-]. */
const SHADOW = { gaps: 6, fall: 0.15, below: 0.3 };

/**
 * Follows the wall from the deepest point up to its shoulder: the edge is where the wall, drawn on, meets the line.
 * A burr stands above the line beyond that and has no part in it.
 */
export function findEdge(
  frame: GrooveFrame,
  deepestAt: number,
  depth: number,
  side: -1 | 1,
): Edge | undefined {
  const { u, d, smooth, noise, spacing } = frame;
  const n = u.length;
  const base = frame.shoulder[side < 0 ? 0 : 1];
  const near = Math.min(3 * noise + 0.002 * depth, 0.2 * depth);
  let inside = deepestAt;
  // the outermost crossing from which it stays up: a ridge between tracks may reach the surface too
  let i = deepestAt;
  let found = false;
  for (; i + side >= 0 && i + side < n; i += side) {
    if (smooth[i + side]! - base <= near) {
      let deep = 0;
      let looked = 0;
      for (let k = i + side; k >= 0 && k < n && looked < 5; k += side) {
        if (smooth[k]! - base > near) deep += 1;
        looked += 1;
      }
      if (deep <= 1) {
        inside = i;
        found = true;
        break;
      }
    }
  }
  if (!found) return undefined;
  const outside = inside + side;
  const gap = Math.abs(u[outside]! - u[inside]!);
  const fall = d[inside]! - d[outside]!;
  const shadow = isShadowed(frame, outside, deepestAt, depth, base);
  let deep = inside;
  while (deep !== deepestAt && smooth[deep]! - base < TOP_PART * depth) deep -= side;
  const count = Math.abs(deep - inside) + 1;
  const bracket = {
    u: (u[inside]! + u[outside]!) / 2,
    variance: gap ** 2 / 12 + (noise / Math.max(1e-6, fall / Math.max(gap, 1e-12))) ** 2,
    degrees: Number.POSITIVE_INFINITY,
    slope: Math.max(0, fall / Math.max(gap, 1e-12)),
  };
  if (count >= 4 && !shadow) {
    const [low, high] = side < 0 ? [inside, deep] : [deep, inside];
    const across = Float64Array.from({ length: count }, (_, k) => side * -u[low + k]!);
    const down = Float64Array.from({ length: count }, (_, k) => d[low + k]! - base);
    const edge = topOfWall(across, down, side * -u[side < 0 ? low : high]!);
    if (edge !== undefined) {
      const place = -side * edge.u;
      const beyond = (place - u[outside]!) * side;
      const within = (u[inside]! - place) * side;
      const slack = 3 * Math.sqrt(edge.variance) + 2 * spacing + near / Math.max(edge.slope, 0.02);
      if (beyond < slack && within < slack)
        return {
          u: place,
          variance: edge.variance,
          degrees: edge.degrees,
          inside,
          slope: edge.slope,
          shadow,
        };
    }
  }
  return { ...bracket, inside, shadow };
}

/** Whether points are missing on the upper part of the wall: its top may lie anywhere in the gap. */
function isShadowed(
  { u, d, spacing }: GrooveFrame,
  outside: number,
  deepestAt: number,
  depth: number,
  base: number,
): boolean {
  const step = outside < deepestAt ? 1 : -1;
  for (let i = outside; i !== deepestAt && d[i]! - base < SHADOW.below * depth; i += step) {
    const gap = Math.abs(u[i + step]! - u[i]!);
    if (gap > SHADOW.gaps * spacing && d[i + step]! - d[i]! > SHADOW.fall * depth) return true;
  }
  return false;
}

/** Where a wall's top, drawn on, reaches depth 0; `t` grows into the groove. */
interface TopEnd {
  readonly u: number;
  readonly variance: number;
  readonly degrees: number;
  readonly slope: number;
  /** Sum of squares about its line. */
  readonly squares: number;
}

/** Follows a wall's top up to depth 0: by a bent line where there are points enough, and what its order leaves open. */
function topOfWall(t: Float64Array, depth: Float64Array, start: number): TopEnd | undefined {
  const line = fitPolynomial(t, depth, 1);
  if (line === undefined) return undefined;
  const steepness = slopeAt(line, start);
  if (!(steepness > 0)) return undefined;
  // noise is in the depth; but a steep wall spans more depth than its noise
  const steep = steepness >= 1.2;
  const end = (order: number): TopEnd | undefined => {
    const fit = steep ? fitPolynomial(depth, t, order) : fitPolynomial(t, depth, order);
    if (fit === undefined) return undefined;
    return steep ? endOfSteep(fit) : endOfShallow(fit, start);
  };
  if (t.length < CURVED) return end(1);
  const second = end(2) ?? end(1);
  const third = t.length >= 2 * CURVED ? end(3) : undefined;
  if (second === undefined || third === undefined) return second;
  const chosen = second.squares - third.squares > CLEARLY * (third.squares / third.degrees) ? third : second;
  return { ...chosen, variance: chosen.variance + (third.u - second.u) ** 2 / 4 };
}

function endOfSteep(fit: PolynomialFit): TopEnd {
  return {
    u: polynomialAt(fit, 0),
    variance: varianceAt(fit, 0),
    degrees: fit.degrees,
    slope: 1 / Math.max(Math.abs(slopeAt(fit, 0)), 1e-3),
    squares: fit.squares,
  };
}

function endOfShallow(fit: PolynomialFit, start: number): TopEnd | undefined {
  let place = start;
  for (let step = 0; step < 20; step += 1) {
    const slope = slopeAt(fit, place);
    if (!(slope > 0.02)) return undefined;
    const move = polynomialAt(fit, place) / slope;
    place -= move;
    if (Math.abs(move) < 1e-9) break;
  }
  const slope = slopeAt(fit, place);
  if (!(slope > 0.02)) return undefined;
  return {
    u: place,
    variance: varianceAt(fit, place) / slope ** 2,
    degrees: fit.degrees,
    slope,
    squares: fit.squares,
  };
}
