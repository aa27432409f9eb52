/**
 * A chance in words a crew uses: "95 in 100", or in 1000 where hundreds do not tell.
 *
 * Always rounded down, so that nothing reads surer than it is.
 */
export function chanceWords(chance: number): string {
  if (!Number.isFinite(chance)) return 'unknown';
  const share = Math.min(1, Math.max(0, chance));
  if (share >= 0.999) return 'over 999 in 1000';
  if (share > 0.99) return `${Math.floor(share * 1000 + 1e-6)} in 1000`;
  return `${Math.floor(share * 100 + 1e-6)} in 100`;
}
