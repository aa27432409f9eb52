/** Error of an energy balance from which on it is worth a figure [-]. */
const WORTH_A_FIGURE = 1e-6;

/** How well an energy balance adds up, `error` being what is missing of it as a share: `it adds up`, `0.3 % of it is missing`. */
export function balanceWords(error: number): string {
  const missing = Math.abs(error);
  return missing < WORTH_A_FIGURE ? 'it adds up' : `${(100 * missing).toPrecision(1)} % of it is missing`;
}
