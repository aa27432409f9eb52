import { airDensity, airViscosity } from './air-state.ts';
import { frictionFactor } from './friction-factor.ts';

/** Air as it flows in a hose. */
export interface HoseFlow {
  /** Mass flow [kg/s]. */
  readonly flow: number;
  /** Absolute pressure in the hose [Pa abs]. */
  readonly pressure: number;
  /** Temperature [K]. */
  readonly temperature: number;
}

/**
 * Pressure lost per metre of a straight hose in which the air's density changes little.
 *
 * Darcy and Weisbach, dp/L = f/D rho v^2/2, with Colebrook's factor; for runs that lose a small part of their pressure,
 * such as one metre. Whole runs are solved by airPoint.
 *
 * @param air - mass flow, absolute pressure and temperature [record], flow >= 0, pressure and temperature > 0
 * @param bore - bore [m], > 0
 * @param roughness - absolute roughness of the wall [m], 0 to a tenth of the bore
 * @returns pressure lost per metre [Pa/m]
 * @source Darcy and Weisbach with Colebrook, textbook
 * @example
 * hoseLossPerMetre({ flow: 0.015, pressure: 7e5, temperature: 293.15 }, 0.016, 1.5e-6) // => 419.3056...
 */
export function hoseLossPerMetre(
  { flow, pressure, temperature }: HoseFlow,
  bore: number,
  roughness: number,
): number {
  if (flow === 0) return 0;
  const density = airDensity(pressure, temperature);
  const speed = flow / (density * (Math.PI / 4) * bore ** 2);
  const reynolds = (density * speed * bore) / airViscosity(temperature);
  return ((frictionFactor(reynolds, roughness / bore) / bore) * density * speed ** 2) / 2;
}
