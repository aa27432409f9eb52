/** Stefan-Boltzmann constant, CODATA 2018 [W/(m2 K4)]. */
const STEFAN_BOLTZMANN = 5.670374419e-8;
const GRAVITY = 9.80665;
/** Gas constant of dry air, US Standard Atmosphere 1976 [J/(kg K)]. */
const AIR_CONSTANT = 287.05287;
const PRESSURE = 101_325;
const SPECIFIC_HEAT = 1006;

/**
 * Nusselt number of free convection from a horizontal cylinder in still fluid.
 *
 * Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2 for 1e-5 <= Ra <= 1e12.
 *
 * @param prandtl - Prandtl number [-], > 0
 * @param rayleigh - Rayleigh number [-], 1e-5 to 1e12
 * @returns Nusselt number [-]
 * @source Churchill and Chu 1975; check value of an open heat-transfer library (confirmed)
 * @example
 * cylinderNusselt(0.69, 0.69 * 2.63e9) // => 139.13494
 */
export function cylinderNusselt(prandtl: number, rayleigh: number): number {
  const fluid = (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27);
  return (0.6 + (0.387 * rayleigh ** (1 / 6)) / fluid) ** 2;
}

/**
 * Heat that a straight horizontal cable loses to still air and to its surroundings, per metre.
 *
 * Free convection (Churchill and Chu, air at film temperature after the US Standard Atmosphere 1976) and grey
 * radiation. Without sun, clear of other surfaces.
 *
 * @param diameter - outside diameter [m], > 0
 * @param surface - surface temperature [K], >= ambient
 * @param ambient - temperature of air and surroundings [K], 230 to 350
 * @param emissivity - of the surface [-], 0 to 1
 * @returns heat lost per metre [W/m]
 * @source derived from Churchill and Chu 1975 and the Stefan-Boltzmann law
 * @example
 * cableSurfaceLoss(0.0195, 343.15, 303.15, 0.9) // => 35.0701656
 */
export function cableSurfaceLoss(
  diameter: number,
  surface: number,
  ambient: number,
  emissivity: number,
): number {
  const film = (surface + ambient) / 2;
  const viscosity = (1.458e-6 * film ** 1.5) / (film + 110.4);
  const conductivity = (2.64638e-3 * film ** 1.5) / (film + 245.4 * 10 ** (-12 / film));
  const kinematic = (viscosity * AIR_CONSTANT * film) / PRESSURE;
  const prandtl = (viscosity * SPECIFIC_HEAT) / conductivity;
  const rayleigh = ((GRAVITY / film) * (surface - ambient) * diameter ** 3 * prandtl) / kinematic ** 2;
  const convection = (cylinderNusselt(prandtl, rayleigh) * conductivity * (surface - ambient)) / diameter;
  return Math.PI * diameter * (convection + emissivity * STEFAN_BOLTZMANN * (surface ** 4 - ambient ** 4));
}
