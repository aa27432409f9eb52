/** Least step of the form 1, 2 or 5 times a power of ten that is not below `least`. */
export function niceStep(least: number): number {
  if (!(least > 0) || !Number.isFinite(least)) return 1;
  const power = 10 ** Math.floor(Math.log10(least));
  const factor = [1, 2, 5].find((candidate) => candidate * power >= least * (1 - 1e-9)) ?? 10;
  return factor * power;
}
