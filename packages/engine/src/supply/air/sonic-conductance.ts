import { AIR_GAS_CONSTANT } from './air-state.ts';

/** Density of the ISO 6358 reference atmosphere, 20 degC, 1 bar, 65 % humidity (memory) [kg/m3]. */
const REFERENCE_DENSITY = 1.185;
/** Temperature of the ISO 6358 reference atmosphere [K]. */
const REFERENCE_TEMPERATURE = 293.15;
/** Ratio of specific heats of air [-]. */
const HEAT_RATIO = 1.4;

/** Flow behaviour of a component as ISO 6358 measures it. */
export interface SonicConductance {
  /** Sonic conductance C [m3/(s Pa)]. */
  readonly conductance: number;
  /** Critical pressure ratio b, below which the component is choked [-]. */
  readonly criticalRatio: number;
}

/** Mass flow per pascal of upstream pressure while choked [kg/(s Pa)]. */
function massConductance({ conductance }: SonicConductance, temperature: number): number {
  return conductance * REFERENCE_DENSITY * Math.sqrt(REFERENCE_TEMPERATURE / temperature);
}

/**
 * Mass flow through a component between two pressures.
 *
 * m = C rho0 p1 sqrt(T0/T1) up to p2/p1 = b; times sqrt(1 - ((p2/p1 - b)/(1 - b))^2) above it.
 *
 * @param inlet - absolute pressure before the component [Pa abs], > 0
 * @param outlet - absolute pressure behind the component [Pa abs], >= 0
 * @param component - sonic conductance and critical ratio [record], C > 0, 0 <= b < 1
 * @param temperature - temperature before the component [K], > 0
 * @returns mass flow, 0 where the outlet is not below the inlet [kg/s]
 * @source ISO 6358
 * @example
 * conductedFlow(650000, 520000, { conductance: 8e-8, criticalRatio: 0.35 }, 293.15) // => 0.0444651414
 */
export function conductedFlow(
  inlet: number,
  outlet: number,
  component: SonicConductance,
  temperature: number,
): number {
  if (outlet >= inlet) return 0;
  const { criticalRatio: b } = component;
  const choked = massConductance(component, temperature) * inlet;
  const excess = Math.max(0, (outlet / inlet - b) / (1 - b));
  return choked * Math.sqrt(1 - excess ** 2);
}

/**
 * Pressure before a component that drives a mass flow into the pressure behind it, and whether it is choked.
 *
 * The equation of ISO 6358 solved for p1 in closed form, so that its infinite slope at p2/p1 = 1 does no harm.
 *
 * @param flow - mass flow [kg/s], >= 0
 * @param outlet - absolute pressure behind the component [Pa abs], > 0
 * @param component - sonic conductance and critical ratio [record], C > 0, 0 <= b < 1
 * @param temperature - temperature before the component [K], > 0
 * @returns inlet pressure [Pa abs], and whether it is choked [record]
 * @source ISO 6358
 * @example
 * conductedInlet(0.0444651414, 520000, { conductance: 8e-8, criticalRatio: 0.35 }, 293.15) // => {"pressure":649999.9999...,"choked":false}
 */
export function conductedInlet(
  flow: number,
  outlet: number,
  component: SonicConductance,
  temperature: number,
): { readonly pressure: number; readonly choked: boolean } {
  const { criticalRatio: b } = component;
  const sonic = flow / massConductance(component, temperature);
  if (outlet <= b * sonic) return { pressure: sonic, choked: true };
  const constant = outlet ** 2 + (sonic * (1 - b)) ** 2;
  const root = Math.sqrt((b * outlet) ** 2 + (1 - 2 * b) * constant);
  return { pressure: constant / (b * outlet + root), choked: false };
}

/** Pressure that a mass flow leaves behind a component, undefined where the inlet cannot drive it. */
export function conductedOutlet(
  flow: number,
  inlet: number,
  component: SonicConductance,
  temperature: number,
): number | undefined {
  const { criticalRatio: b } = component;
  const share = flow / (massConductance(component, temperature) * inlet);
  if (share > 1) return undefined;
  return inlet * (b + (1 - b) * Math.sqrt(1 - share ** 2));
}

/**
 * Sonic conductance of a nozzle or a drilled passage of a stated area.
 *
 * C = Cd A sqrt(k/(R T0)) (2/(k+1))^((k+1)/(2(k-1))) / rho0 with b = 0.528: about 0.2 dm3/(s bar) per mm2.
 *
 * @param area - area of the passage [m2], > 0
 * @param dischargeCoefficient - discharge coefficient [-], 0.97 rounded, 0.61 to 0.65 sharp edged, at most 1
 * @returns conductance and critical ratio [record]
 * @source isentropic choked flow; coefficients: handbook tables
 * @example
 * conductanceOfArea(Math.PI / 4 * 0.00635 ** 2, 1) // => {"conductance":6.30831491e-8,"criticalRatio":0.528281788}
 */
export function conductanceOfArea(area: number, dischargeCoefficient: number): SonicConductance {
  const k = HEAT_RATIO;
  const choked =
    Math.sqrt(k / (AIR_GAS_CONSTANT * REFERENCE_TEMPERATURE)) * (2 / (k + 1)) ** ((k + 1) / (2 * (k - 1)));
  return {
    conductance: (dischargeCoefficient * area * choked) / REFERENCE_DENSITY,
    criticalRatio: (2 / (k + 1)) ** (k / (k - 1)),
  };
}

/**
 * Sonic conductance from a flow that was measured at a pressure, blowing freely.
 *
 * A choked jet passes mass in proportion to the absolute pressure before it; b is that of a nozzle.
 *
 * @param flow - measured mass flow [kg/s], > 0
 * @param inlet - absolute pressure before the torch while it was measured [Pa abs], > 1.9 times the atmosphere
 * @param temperature - temperature of the air [K], > 0
 * @returns conductance and critical ratio [record]
 * @source ISO 6358, choked branch
 * @example
 * conductanceFromFlow(0.06162, 650000, 293.15).conductance * 1e8 // => 8
 */
export function conductanceFromFlow(flow: number, inlet: number, temperature: number): SonicConductance {
  const k = HEAT_RATIO;
  return {
    conductance: flow / (inlet * REFERENCE_DENSITY * Math.sqrt(REFERENCE_TEMPERATURE / temperature)),
    criticalRatio: (2 / (k + 1)) ** (k / (k - 1)),
  };
}
