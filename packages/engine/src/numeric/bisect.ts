/** Halvings after which an interval of doubles cannot shrink any further. */
const HALVINGS_MOST = 200;

/**
 * Finds where a rising or falling function crosses zero inside a bracket, by halving.
 *
 * The bracket must hold a sign change; the answer lies within `tolerance` of the crossing.
 * Returns undefined when both ends have the same sign, so that nothing is extrapolated.
 *
 * @param f - the function [-], finite in the bracket
 * @param low - lower end of the bracket [-], below `high`
 * @param high - upper end of the bracket [-], above `low`
 * @param tolerance - greatest distance from the crossing [-], > 0
 * @returns the crossing, or undefined without a sign change [-]
 * @source bisection, any numerical analysis text
 * @example
 * bisect((x) => x * x - 2, 0, 2, 1e-12) // => 1.41421356237
 */
export function bisect(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number | undefined {
  let a = low;
  let b = high;
  const fa = f(a);
  if (fa === 0) return a;
  const fb = f(b);
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) return undefined;
  for (let step = 0; step < HALVINGS_MOST && b - a > tolerance; step += 1) {
    const middle = (a + b) / 2;
    const value = f(middle);
    if (value === 0) return middle;
    if (value > 0 === fa > 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}
