/** Reynolds number up to which flow is taken as laminar [-]. */
const LAMINAR_MOST = 2300;
/** Reynolds number from which flow is taken as turbulent [-]. */
const TURBULENT_LEAST = 4000;

/**
 * Darcy friction factor of turbulent flow in a round pipe.
 *
 * Colebrook: 1/sqrt f = -2 log10(e/3.7 + 2.51/(Re sqrt f)), by Newton's method on 1/sqrt f, which is sure to
 * converge here because the equation is rising and curved one way. Re > 4000.
 *
 * @param reynolds - Reynolds number [-], > 2000
 * @param roughness - roughness over bore [-], 0 to 0.1
 * @returns Darcy friction factor [-]
 * @source C. F. Colebrook 1939; check value of the open library fluids
 * @example
 * colebrookFriction(100000, 0.0001) // => 0.0185138661
 */
export function colebrookFriction(reynolds: number, roughness: number): number {
  let x = 8;
  for (let step = 0; step < 50; step += 1) {
    const inside = roughness / 3.7 + (2.51 * x) / reynolds;
    const value = x + 2 * Math.log10(inside);
    const slope = 1 + (2 / Math.LN10) * (2.51 / reynolds / inside);
    const change = value / slope;
    x -= change;
    if (Math.abs(change) < 1e-14 * x) break;
  }
  return 1 / x ** 2;
}

/**
 * Darcy friction factor at any Reynolds number.
 *
 * 64/Re up to 2300, Colebrook from 4000, a straight line between: the jump of the real transition is smoothed so
 * that the loss always rises with the flow.
 *
 * @param reynolds - Reynolds number [-], > 0
 * @param roughness - roughness over bore [-], 0 to 0.1
 * @returns Darcy friction factor [-]
 * @source Hagen-Poiseuille and Colebrook; the line between is judgement
 * @example
 * frictionFactor(1000, 0) // => 0.064
 */
export function frictionFactor(reynolds: number, roughness: number): number {
  if (reynolds <= LAMINAR_MOST) return 64 / reynolds;
  if (reynolds >= TURBULENT_LEAST) return colebrookFriction(reynolds, roughness);
  const share = (reynolds - LAMINAR_MOST) / (TURBULENT_LEAST - LAMINAR_MOST);
  return (1 - share) * (64 / LAMINAR_MOST) + share * colebrookFriction(TURBULENT_LEAST, roughness);
}
