/** Constant of the Gaussian filter, so that half of the amplitude passes at the cutoff [-]. */
const ALPHA = Math.sqrt(Math.LN2 / Math.PI);
/** Distance in cutoffs beyond which the weight counts nothing [-]. */
const REACH = 1;

/**
 * The waviness of a profile by the Gaussian filter: at the cutoff half of the amplitude passes.
 *
 * Ends are kept by weighing what there is; places need not be even. The roughness is the profile less this.
 *
 * @param across - places of the points [m], rising
 * @param height - their heights [m], as many
 * @param cutoff - wavelength of which half of the amplitude passes [m], > 0
 * @returns the filtered heights [list]
 * @source ISO 16610-21 (alpha 0.4697; confirmed by its transmission at four wavelengths)
 * @example
 * gaussianFilter(Float64Array.of(0, 1, 2, 3), Float64Array.of(5, 5, 5, 5), 2)[1] // => 5
 */
export function gaussianFilter(across: Float64Array, height: Float64Array, cutoff: number): Float64Array {
  const n = across.length;
  const out = new Float64Array(n);
  let first = 0;
  for (let i = 0; i < n; i += 1) {
    while (across[i]! - across[first]! > REACH * cutoff) first += 1;
    let sum = 0;
    let total = 0;
    for (let k = first; k < n && across[k]! - across[i]! <= REACH * cutoff; k += 1) {
      const t = (across[k]! - across[i]!) / (ALPHA * cutoff);
      const run = (across[Math.min(n - 1, k + 1)]! - across[Math.max(0, k - 1)]!) / 2;
      const weight = run * Math.exp(-Math.PI * t * t);
      sum += weight * height[k]!;
      total += weight;
    }
    out[i] = total > 0 ? sum / total : height[i]!;
  }
  return out;
}
