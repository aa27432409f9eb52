/**
 * Heat that austenitic stainless steel takes up from 20 degC to a temperature, per mass.
 *
 * Integral of the linear fit cp = 428.46 + 0.1816 T, T in kelvin, for type 316. The fit is stated to 1573 K and
 * within 5 %; above that it is carried on to the melting range.
 *
 * @param temperature - temperature of the solid steel [K], 293.15 to 1750
 * @returns heat per mass [J/kg]
 * @source Mills 2002 data, fits published with an open finite-element code (confirmed)
 * @example
 * stainlessEnthalpy(1293.15) // => 572496.04
 */
export function stainlessEnthalpy(temperature: number): number {
  const room = 293.15;
  return 428.46 * (temperature - room) + (0.1816 / 2) * (temperature ** 2 - room ** 2);
}
