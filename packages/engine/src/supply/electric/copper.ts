import { ZERO_CELSIUS } from '../../quantity/index.ts';

/** Temperature coefficient of annealed copper referred to 20 degC, IEC 60028 (confirmed) [1/K]. */
const ALPHA_20 = 0.00393;
/** Temperature coefficient of copper referred to 75 degC, NEC chapter 9 table 8 note (confirmed) [1/K]. */
const ALPHA_75 = 0.00323;
/** Volumetric heat capacity of copper, IEC 60853 (memory) [J/(m3 K)]. */
export const COPPER_HEAT_CAPACITY = 3.45e6;
/** Thermal conductivity of copper at cable temperatures, handbooks (memory) [W/(m K)]. */
export const COPPER_CONDUCTIVITY = 391;
/** Above this the linear law of resistance is not vouched for, and no lead may be this hot anyway [K]. */
export const HOTTEST = ZERO_CELSIUS + 200;

/**
 * Resistance of copper at a temperature, from its resistance at a reference temperature.
 *
 * R(T) = R_ref (1 + alpha_ref (T - T_ref)); alpha belongs to the reference: 0.00393 1/K with 20 degC (IEC), 0.00323 1/K
 * with 75 degC (NEC). Valid from about -50 to 200 degC.
 *
 * @param reference - resistance at the reference temperature [ohm], >= 0; per metre where that is wanted
 * @param temperature - conductor temperature [K], 223 to 473
 * @param referenceTemperature - temperature the reference belongs to [text], `20 degC` or `75 degC`
 * @returns resistance at the temperature [ohm]
 * @source IEC 60028; NEC chapter 9 table 8 note 2 (confirmed)
 * @example
 * copperResistance(0.206, 273.15 + 60, '20 degC') // => 0.2383832
 * copperResistance(0.0608, 273.15 + 20, '75 degC') // => 0.04999888
 */
export function copperResistance(
  reference: number,
  temperature: number,
  referenceTemperature: '20 degC' | '75 degC',
): number {
  const celsius = temperature - ZERO_CELSIUS;
  return referenceTemperature === '20 degC'
    ? reference * (1 + ALPHA_20 * (celsius - 20))
    : reference * (1 + ALPHA_75 * (celsius - 75));
}
