/** Evaluations after which the bracket is taken as it is; halving alone needs fewer for any pair of doubles. */
const STEPS_MOST = 200;

/**
 * Finds where a function crosses zero inside a bracket, by inverse quadratic steps that fall back on halving.
 *
 * Chandrupatla's rule decides which of the two steps is taken, so convergence is as sure as halving and mostly
 * much faster. Returns undefined when both ends have the same sign, so that nothing is extrapolated.
 *
 * @param f - the function [-], continuous and finite in the bracket
 * @param low - one end of the bracket [-], any finite number
 * @param high - the other end of the bracket [-], any finite number
 * @param tolerance - greatest distance from the crossing [-], >= 0
 * @returns the crossing, or undefined without a sign change [-]
 * @source T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149 (memory)
 * @example
 * bracketedRoot((x) => x * x - 2, 0, 2, 1e-14) // => 1.4142135623731
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number | undefined {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) return undefined;
  let c = a;
  let fc = fa;
  let share = 0.5;
  for (let step = 0; step < STEPS_MOST; step += 1) {
    const x = a + share * (b - a);
    const fx = f(x);
    if (fx > 0 === fa > 0) {
      c = a;
      fc = fa;
    } else {
      c = b;
      b = a;
      fc = fb;
      fb = fa;
    }
    a = x;
    fa = fx;
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const slack = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    const least = slack / Math.abs(b - a);
    if (fx === 0 || least > 0.5) return best;
    share = nextShare(a, b, c, fa, fb, fc);
    share = Math.min(1 - least, Math.max(least, share));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

function nextShare(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  const quadratic = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
  if (!quadratic) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
