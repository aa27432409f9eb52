/** Readings along one pass, in order of place, ready for the recursions. */
export interface SeamReadings {
  readonly values: Float64Array;
  /** Variance of the noise of each reading. */
  readonly variances: Float64Array;
  /** Distance from the reading before, over range / sqrt(3); the first is 0 [-]. */
  readonly gaps: Float64Array;
}

/** What readings along one pass say of its level: as good as one reading of this mean and variance, and a rest. */
export interface PassSummary {
  readonly mean: number;
  readonly variance: number;
  /** Minus twice the ln likelihood that does not depend on the level, but for the constant of pi. */
  readonly rest: number;
}

/** Puts readings in order of place. */
export function seamReadings(
  readings: readonly { readonly place: number; readonly value: number; readonly variance: number }[],
  range: number,
): SeamReadings {
  const sorted = [...readings].sort((a, b) => a.place - b.place);
  return {
    values: Float64Array.from(sorted, ({ value }) => value),
    variances: Float64Array.from(sorted, ({ variance }) => variance),
    gaps: Float64Array.from(sorted, ({ place }, i) =>
      i === 0 ? 0 : (Math.sqrt(3) * (place - sorted[i - 1]!.place)) / range,
    ),
  };
}

/**
 * Sums readings up that share a level and a Matern 3/2 process: linear in their number.
 *
 * The process is a state of value and slope; the filter runs over the readings and over a level of 1 side by side with
 * the same gains (Hartikainen and Sarkka 2010). `weights` divide the noise variances.
 */
export function summarisePass(seam: SeamReadings, seamSd: number, weights: Float64Array): PassSummary {
  const { values, variances, gaps } = seam;
  const count = values.length;
  const s2 = seamSd * seamSd;
  if (count === 1) return { mean: values[0]!, variance: s2 + variances[0]! / weights[0]!, rest: 0 };
  // State of the process after the readings so far, and the same for a level of 1.
  let [y1, y2, u1, u2] = [0, 0, 0, 0];
  let [p11, p12, p22] = [s2, 0, s2];
  let [information, pull, square, logDet] = [0, 0, 0, 0];
  for (let i = 0; i < count; i += 1) {
    if (i > 0) {
      const d = gaps[i]!;
      const e = Math.exp(-d);
      const [f11, f12, f21, f22] = [e * (1 + d), e * d, -e * d, e * (1 - d)];
      [y1, y2] = [f11 * y1 + f12 * y2, f21 * y1 + f22 * y2];
      [u1, u2] = [f11 * u1 + f12 * u2, f21 * u1 + f22 * u2];
      // P' = F (P - P_inf) F' + P_inf, with P_inf = s2 I.
      const [a, b, c] = [p11 - s2, p12, p22 - s2];
      p11 = f11 * (f11 * a + f12 * b) + f12 * (f11 * b + f12 * c) + s2;
      p12 = f21 * (f11 * a + f12 * b) + f22 * (f11 * b + f12 * c);
      p22 = f21 * (f21 * a + f22 * b) + f22 * (f21 * b + f22 * c) + s2;
    }
    const spread = p11 + variances[i]! / weights[i]!;
    const surprise = values[i]! - y1;
    const unit = 1 - u1;
    information += (unit * unit) / spread;
    pull += (unit * surprise) / spread;
    square += (surprise * surprise) / spread;
    logDet += Math.log(spread);
    const [g1, g2] = [p11 / spread, p12 / spread];
    y1 += g1 * surprise;
    y2 += g2 * surprise;
    u1 += g1 * unit;
    u2 += g2 * unit;
    p22 -= g2 * p12;
    p12 -= g1 * p12;
    p11 -= g1 * p11;
  }
  return {
    mean: pull / information,
    variance: 1 / information,
    rest: logDet + Math.log(information) + square - (pull * pull) / information,
  };
}

/**
 * Mean square of each reading's noise over its variance, given all readings of the pass and its level.
 *
 * Disturbance smoother of the state-space form (Durbin and Koopman, section 4.5, memory). About 1 for a reading that
 * fits, much more for one that does not.
 */
export function noiseSquares(
  seam: SeamReadings,
  seamSd: number,
  level: number,
  weights: Float64Array,
): Float64Array {
  const { values, variances, gaps } = seam;
  const count = values.length;
  const s2 = seamSd * seamSd;
  const kept = new Float64Array(count * 4);
  let [y1, y2] = [0, 0];
  let [p11, p12, p22] = [s2, 0, s2];
  for (let i = 0; i < count; i += 1) {
    if (i > 0) {
      const d = gaps[i]!;
      const e = Math.exp(-d);
      const [f11, f12, f21, f22] = [e * (1 + d), e * d, -e * d, e * (1 - d)];
      [y1, y2] = [f11 * y1 + f12 * y2, f21 * y1 + f22 * y2];
      const [a, b, c] = [p11 - s2, p12, p22 - s2];
      p11 = f11 * (f11 * a + f12 * b) + f12 * (f11 * b + f12 * c) + s2;
      p12 = f21 * (f11 * a + f12 * b) + f22 * (f11 * b + f12 * c);
      p22 = f21 * (f21 * a + f22 * b) + f22 * (f21 * b + f22 * c) + s2;
    }
    const spread = p11 + variances[i]! / weights[i]!;
    const surprise = values[i]! - level - y1;
    const [g1, g2] = [p11 / spread, p12 / spread];
    kept[4 * i] = surprise;
    kept[4 * i + 1] = spread;
    kept[4 * i + 2] = g1;
    kept[4 * i + 3] = g2;
    y1 += g1 * surprise;
    y2 += g2 * surprise;
    p22 -= g2 * p12;
    p12 -= g1 * p12;
    p11 -= g1 * p11;
  }
  const squares = new Float64Array(count);
  // Backwards: pull r and its precision N of all that comes after, both in terms of the state after reading i.
  let [r1, r2] = [0, 0];
  let [n11, n12, n22] = [0, 0, 0];
  for (let i = count - 1; i >= 0; i -= 1) {
    const surprise = kept[4 * i]!;
    const spread = kept[4 * i + 1]!;
    const g1 = kept[4 * i + 2]!;
    const g2 = kept[4 * i + 3]!;
    const variance = variances[i]! / weights[i]!;
    const pulled = surprise / spread - (g1 * r1 + g2 * r2);
    const known = 1 / spread + g1 * (g1 * n11 + g2 * n12) + g2 * (g1 * n12 + g2 * n22);
    const mean = variance * pulled;
    squares[i] = (mean * mean + variance - variance * variance * known) / variances[i]!;
    if (i === 0) break;
    // Through the reading: r <- H' v / S + (I - K H)' r, then through the gap: F'.
    const a1 = surprise / spread + (1 - g1) * r1 - g2 * r2;
    const a2 = r2;
    const l = 1 - g1;
    const m11 = 1 / spread + l * l * n11 - 2 * l * g2 * n12 + g2 * g2 * n22;
    const m12 = l * n12 - g2 * n22;
    const m22 = n22;
    const d = gaps[i]!;
    const e = Math.exp(-d);
    const [f11, f12, f21, f22] = [e * (1 + d), e * d, -e * d, e * (1 - d)];
    [r1, r2] = [f11 * a1 + f21 * a2, f12 * a1 + f22 * a2];
    n11 = f11 * (f11 * m11 + f21 * m12) + f21 * (f11 * m12 + f21 * m22);
    n12 = f11 * (f12 * m11 + f22 * m12) + f21 * (f12 * m12 + f22 * m22);
    n22 = f12 * (f12 * m11 + f22 * m12) + f22 * (f12 * m12 + f22 * m22);
  }
  return squares;
}
