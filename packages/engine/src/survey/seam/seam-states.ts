import type { DrawStream } from '../../numeric/index.ts';

/** A process along a seam: what is common to all of it, and a Matern 3/2 course on top. */
export interface SeamSpread {
  /** Standard deviation of what is common to the whole seam [unit of the process]. */
  readonly common: number;
  /** Standard deviation of the course along the seam [unit of the process]. */
  readonly course: number;
  /** Range of that course, Matern 3/2 [m]. */
  readonly range: number;
}

/** One reading of a process along a seam. */
export interface SeamReading {
  /** Place along the seam [m]. */
  readonly at: number;
  /** Reading, less the mean of the process there [unit of the process]. */
  readonly value: number;
  /** Standard deviation of the reading [unit of the process]. */
  readonly sd: number;
}

/** What readings say of the process, at every place where there is a reading or one was asked for. */
export interface SeamStates {
  /** Places, rising [m]. */
  readonly at: Float64Array;
  readonly mean: Float64Array;
  readonly variance: Float64Array;
  /** ln of the density of the readings [-]. */
  readonly lnDensity: number;
  /** Covariance of the process at one place, by its index, with it at every place. */
  readonly covarianceWith: (index: number) => Float64Array;
  /** One course of the process as it may be, given the readings. */
  readonly draw: (stream: DrawStream) => Float64Array;
}

const SIZE = 9;
/** Places nearer than this are one [m]. */
const SAME = 1e-9;
/** What the common part may not fall below, as a part of the course: a variance of nothing cannot be inverted [-]. */
const COMMON_LEAST = 1e-6;

/**
 * Conditions the process on readings in a number of steps that grows with their number only: a Kalman filter over the
 * state (course, its slope over the rate, common part) forwards, and Rauch, Tung and Striebel's smoother backwards.
 * Source: Hartikainen and Särkkä, IEEE MLSP 2010 (memory); held to the exact answer by a test.
 */
export function seamStates(
  spread: SeamSpread,
  readings: readonly SeamReading[],
  asked: readonly number[],
): SeamStates {
  const order = [...readings].sort((a, b) => a.at - b.at);
  const all = Float64Array.from([...order.map(({ at }) => at), ...asked]).sort();
  let n = 0;
  for (let i = 0; i < all.length; i += 1) {
    if (n === 0 || all[i]! - all[n - 1]! > SAME) {
      all[n] = all[i]!;
      n += 1;
    }
  }
  const at = all.slice(0, n);
  const rate = Math.sqrt(3) / spread.range;
  const course2 = spread.course ** 2;
  const common2 = Math.max(spread.common, COMMON_LEAST * spread.course) ** 2;
  const m = new Float64Array(3 * n);
  const p = new Float64Array(SIZE * n);
  const forecast = new Float64Array(3 * n);
  const forecastP = new Float64Array(SIZE * n);
  const steps = new Float64Array(4 * n);
  let next = 0;
  let lnDensity = 0;
  for (let k = 0; k < n; k += 1) {
    if (k === 0) {
      forecastP.set([course2, 0, 0, 0, course2, 0, 0, 0, common2], 0);
    } else {
      const r = rate * (at[k]! - at[k - 1]!);
      const e = Math.exp(-r);
      const a = e * (1 + r);
      const b = e * r;
      const c = -b;
      const d = e * (1 - r);
      steps.set([a, b, c, d], 4 * k);
      const j = 3 * (k - 1);
      forecast[3 * k] = a * m[j]! + b * m[j + 1]!;
      forecast[3 * k + 1] = c * m[j]! + d * m[j + 1]!;
      forecast[3 * k + 2] = m[j + 2]!;
      const o = SIZE * (k - 1);
      const [p00, p01, p02, p11, p12, p22] = [p[o]!, p[o + 1]!, p[o + 2]!, p[o + 4]!, p[o + 5]!, p[o + 8]!];
      const q00 = course2 * (1 - a * a - b * b);
      const q01 = -course2 * (a * c + b * d);
      const q11 = course2 * (1 - c * c - d * d);
      const f = SIZE * k;
      forecastP[f] = a * a * p00 + 2 * a * b * p01 + b * b * p11 + q00;
      forecastP[f + 1] = a * c * p00 + (a * d + b * c) * p01 + b * d * p11 + q01;
      forecastP[f + 2] = a * p02 + b * p12;
      forecastP[f + 4] = c * c * p00 + 2 * c * d * p01 + d * d * p11 + q11;
      forecastP[f + 5] = c * p02 + d * p12;
      forecastP[f + 8] = p22;
      mirror(forecastP, f);
    }
    for (let i = 0; i < 3; i += 1) m[3 * k + i] = forecast[3 * k + i]!;
    for (let i = 0; i < SIZE; i += 1) p[SIZE * k + i] = forecastP[SIZE * k + i]!;
    for (; next < order.length && order[next]!.at - at[k]! <= SAME; next += 1) {
      lnDensity += update(m, p, k, order[next]!);
    }
  }
  const gain = new Float64Array(SIZE * n);
  const mean = Float64Array.from(m);
  const smooth = Float64Array.from(p);
  const inverse = new Float64Array(SIZE);
  for (let k = n - 2; k >= 0; k -= 1) {
    const f = SIZE * (k + 1);
    invert(forecastP, f, inverse);
    const [a, b, c, d] = [
      steps[4 * (k + 1)]!,
      steps[4 * (k + 1) + 1]!,
      steps[4 * (k + 1) + 2]!,
      steps[4 * (k + 1) + 3]!,
    ];
    const o = SIZE * k;
    for (let i = 0; i < 3; i += 1) {
      const [x, y, z] = [p[o + 3 * i]!, p[o + 3 * i + 1]!, p[o + 3 * i + 2]!];
      const u = a * x + b * y;
      const v = c * x + d * y;
      for (let j = 0; j < 3; j += 1)
        gain[o + 3 * i + j] = u * inverse[j]! + v * inverse[3 + j]! + z * inverse[6 + j]!;
    }
    for (let i = 0; i < 3; i += 1) {
      let sum = m[3 * k + i]!;
      for (let j = 0; j < 3; j += 1)
        sum += gain[o + 3 * i + j]! * (mean[3 * (k + 1) + j]! - forecast[3 * (k + 1) + j]!);
      mean[3 * k + i] = sum;
    }
    // P + G (smoothed - forecast) G'
    for (let i = 0; i < 3; i += 1) {
      for (let j = i; j < 3; j += 1) {
        let sum = p[o + 3 * i + j]!;
        for (let s = 0; s < 3; s += 1)
          for (let t = 0; t < 3; t += 1)
            sum +=
              gain[o + 3 * i + s]! *
              (smooth[f + 3 * s + t]! - forecastP[f + 3 * s + t]!) *
              gain[o + 3 * j + t]!;
        smooth[o + 3 * i + j] = sum;
        smooth[o + 3 * j + i] = sum;
      }
    }
  }
  const variance = new Float64Array(n);
  const value = new Float64Array(n);
  for (let k = 0; k < n; k += 1) {
    value[k] = mean[3 * k]! + mean[3 * k + 2]!;
    const o = SIZE * k;
    variance[k] = Math.max(0, smooth[o]! + 2 * smooth[o + 2]! + smooth[o + 8]!);
  }
  const passes: Passes = { m, p, gain, forecast, forecastP };
  let factors: Float64Array | undefined;
  return {
    at,
    mean: value,
    variance,
    lnDensity,
    covarianceWith: (index) => covarianceWith(index, n, gain, smooth),
    draw: (stream) => {
      factors ??= drawFactors(n, passes);
      return drawCourse(stream, n, passes, factors);
    },
  };
}

function mirror(matrix: Float64Array, o: number): void {
  matrix[o + 3] = matrix[o + 1]!;
  matrix[o + 6] = matrix[o + 2]!;
  matrix[o + 7] = matrix[o + 5]!;
}

/** One reading of course plus common part; gives ln of its density, those before it known. */
function update(m: Float64Array, p: Float64Array, k: number, { value, sd }: SeamReading): number {
  const o = SIZE * k;
  const h = [p[o]! + p[o + 2]!, p[o + 3]! + p[o + 5]!, p[o + 6]! + p[o + 8]!] as const;
  const s = h[0] + h[2] + sd * sd;
  const away = value - m[3 * k]! - m[3 * k + 2]!;
  for (let i = 0; i < 3; i += 1) m[3 * k + i]! += (h[i]! / s) * away;
  for (let i = 0; i < 3; i += 1) for (let j = 0; j < 3; j += 1) p[o + 3 * i + j]! -= (h[i]! * h[j]!) / s;
  return -0.5 * ((away * away) / s + Math.log(2 * Math.PI * s));
}

/** Inverse of a symmetric 3 x 3 matrix, each row scaled by its diagonal first. */
function invert(matrix: Float64Array, o: number, out: Float64Array): void {
  const s = [0, 4, 8].map((i) => 1 / Math.sqrt(Math.max(matrix[o + i]!, 1e-300)));
  const [s0, s1, s2] = s as [number, number, number];
  const b = matrix[o + 1]! * s0 * s1;
  const c = matrix[o + 2]! * s0 * s2;
  const f = matrix[o + 5]! * s1 * s2;
  const determinant = Math.max(1 + 2 * b * c * f - f * f - b * b - c * c, 1e-18);
  out[0] = ((1 - f * f) / determinant) * s0 * s0;
  out[1] = ((c * f - b) / determinant) * s0 * s1;
  out[2] = ((b * f - c) / determinant) * s0 * s2;
  out[4] = ((1 - c * c) / determinant) * s1 * s1;
  out[5] = ((b * c - f) / determinant) * s1 * s2;
  out[8] = ((1 - b * b) / determinant) * s2 * s2;
  mirror(out, 0);
}

function covarianceWith(index: number, n: number, gain: Float64Array, smooth: Float64Array): Float64Array {
  const out = new Float64Array(n);
  const at = SIZE * index;
  let column = [0, 1, 2].map((i) => smooth[at + 3 * i]! + smooth[at + 3 * i + 2]!);
  out[index] = column[0]! + column[2]!;
  for (let k = index - 1; k >= 0; k -= 1) {
    const o = SIZE * k;
    column = [0, 1, 2].map(
      (i) =>
        gain[o + 3 * i]! * column[0]! + gain[o + 3 * i + 1]! * column[1]! + gain[o + 3 * i + 2]! * column[2]!,
    );
    out[k] = column[0]! + column[2]!;
  }
  let row = [1, 0, 1];
  for (let k = index; k < n - 1; k += 1) {
    const o = SIZE * k;
    row = [0, 1, 2].map(
      (j) => row[0]! * gain[o + j]! + row[1]! * gain[o + 3 + j]! + row[2]! * gain[o + 6 + j]!,
    );
    const q = SIZE * (k + 1);
    out[k + 1] = row.reduce((sum, each, i) => sum + each * (smooth[q + 3 * i]! + smooth[q + 3 * i + 2]!), 0);
  }
  return out;
}

interface Passes {
  readonly m: Float64Array;
  readonly p: Float64Array;
  readonly gain: Float64Array;
  readonly forecast: Float64Array;
  readonly forecastP: Float64Array;
}

/** Lower factors of the spread of each state given the next, six numbers each: what all drawn courses share. */
function drawFactors(n: number, { p, gain, forecastP }: Passes): Float64Array {
  const out = new Float64Array(6 * n);
  const spread = new Float64Array(SIZE);
  for (let k = 0; k < n; k += 1) {
    const o = SIZE * k;
    for (let i = 0; i < SIZE; i += 1) spread[i] = p[o + i]!;
    if (k < n - 1) {
      const f = SIZE * (k + 1);
      for (let i = 0; i < 3; i += 1) {
        for (let j = 0; j < 3; j += 1) {
          let sum = 0;
          for (let s = 0; s < 3; s += 1)
            for (let t = 0; t < 3; t += 1)
              sum += gain[o + 3 * i + s]! * forecastP[f + 3 * s + t]! * gain[o + 3 * j + t]!;
          spread[3 * i + j]! -= sum;
        }
      }
    }
    const l00 = Math.sqrt(Math.max(0, spread[0]!));
    const l10 = l00 > 0 ? spread[3]! / l00 : 0;
    const l20 = l00 > 0 ? spread[6]! / l00 : 0;
    const l11 = Math.sqrt(Math.max(0, spread[4]! - l10 * l10));
    const l21 = l11 > 0 ? (spread[7]! - l20 * l10) / l11 : 0;
    const l22 = Math.sqrt(Math.max(0, spread[8]! - l20 * l20 - l21 * l21));
    out.set([l00, l10, l20, l11, l21, l22], 6 * k);
  }
  return out;
}

/** A course drawn from the end backwards, each state given the next. */
function drawCourse(stream: DrawStream, n: number, passes: Passes, factors: Float64Array): Float64Array {
  const { m, gain, forecast } = passes;
  const out = new Float64Array(n);
  let [x0, x1, x2] = [0, 0, 0];
  for (let k = n - 1; k >= 0; k -= 1) {
    const q = 3 * k;
    let [m0, m1, m2] = [m[q]!, m[q + 1]!, m[q + 2]!];
    if (k < n - 1) {
      const o = SIZE * k;
      const d0 = x0 - forecast[q + 3]!;
      const d1 = x1 - forecast[q + 4]!;
      const d2 = x2 - forecast[q + 5]!;
      m0 += gain[o]! * d0 + gain[o + 1]! * d1 + gain[o + 2]! * d2;
      m1 += gain[o + 3]! * d0 + gain[o + 4]! * d1 + gain[o + 5]! * d2;
      m2 += gain[o + 6]! * d0 + gain[o + 7]! * d1 + gain[o + 8]! * d2;
    }
    const z0 = stream.normal();
    const z1 = stream.normal();
    const z2 = stream.normal();
    const l = 6 * k;
    x0 = m0 + factors[l]! * z0;
    x1 = m1 + factors[l + 1]! * z0 + factors[l + 3]! * z1;
    x2 = m2 + factors[l + 2]! * z0 + factors[l + 4]! * z1 + factors[l + 5]! * z2;
    out[k] = x0 + x2;
  }
  return out;
}
