/** Gas constant of dry air, ISO 2533 [J/(kg K)]. */
export const AIR_GAS_CONSTANT = 287.05287;
/** Density at the reference of free air, 20 degC, 1 bar, dry (ISO 1217) [kg/m3]. */
export const FREE_AIR_DENSITY = 100_000 / (AIR_GAS_CONSTANT * 293.15);
/** Standard atmosphere at sea level [Pa abs]. */
export const ATMOSPHERE = 101_325;

/**
 * Density of dry air as an ideal gas.
 *
 * rho = p / (R T); within 0.5 % up to 10 bar near room temperature.
 *
 * @param pressure - absolute pressure [Pa abs], >= 0
 * @param temperature - temperature [K], > 0
 * @returns density [kg/m3]
 * @source ISO 2533 gas constant
 * @example
 * airDensity(101325, 273.15) // => 1.29227075
 */
export function airDensity(pressure: number, temperature: number): number {
  return pressure / (AIR_GAS_CONSTANT * temperature);
}

/**
 * Dynamic viscosity of air.
 *
 * Sutherland's law, 200 to 1000 K at low to moderate pressure.
 *
 * @param temperature - temperature [K], 200 to 1000
 * @returns viscosity [Pa s]
 * @source US Standard Atmosphere 1976 (memory)
 * @example
 * airViscosity(293.15) // => 0.0000181340588
 */
export function airViscosity(temperature: number): number {
  return (1.458e-6 * temperature ** 1.5) / (temperature + 110.4);
}

/**
 * Mass flow of a flow stated as free air (FAD, CAGI scfm): 20 degC, 1 bar, dry.
 *
 * @param freeAir - volume flow at the reference [m3/s], >= 0
 * @returns mass flow [kg/s]
 * @source ISO 1217 reference conditions
 * @example
 * massOfFreeAir(0.000471947443) * 3600 // => 2.0190...
 */
export function massOfFreeAir(freeAir: number): number {
  return freeAir * FREE_AIR_DENSITY;
}

/**
 * Pressure of the atmosphere at a height above the sea.
 *
 * p = 101325 (1 - 2.25577e-5 h)^5.25588.
 *
 * @param height - height above the sea [m], 0 to 11000
 * @returns absolute pressure [Pa abs]
 * @source ASHRAE 1997 form
 * @example
 * atmosphereAt(2400) // => 75625.6562
 */
export function atmosphereAt(height: number): number {
  return ATMOSPHERE * (1 - 2.25577e-5 * height) ** 5.25588;
}
