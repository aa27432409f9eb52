import { bracketedRoot } from '../../numeric/index.ts';

/** Round passage of constant bore at constant temperature. */
export interface IsothermalPassage {
  /** Bore [m]. */
  readonly bore: number;
  /** Friction of the whole passage, f L/D and losses of fittings together [-]. */
  readonly loss: number;
  /** Gas constant times temperature [J/kg]. */
  readonly gasWork: number;
}

/**
 * Mass flow of a gas through a passage at constant temperature, between two pressures.
 *
 * m^2 = A^2 (P1^2 - P2^2) / (R T (K + 2 ln(P1/P2))). An outlet below the choking pressure carries no more than
 * the choking pressure does.
 *
 * @param inlet - absolute pressure at the inlet [Pa abs], > outlet
 * @param outlet - absolute pressure at the outlet [Pa abs], >= 0
 * @param passage - bore, loss and gas [record], bore and loss > 0
 * @returns mass flow [kg/s]
 * @source complete isothermal equation, Crane TP-410; check value of the open library fluids
 * @example
 * isothermalFlow(1e6, 9e5, { bore: 0.5, loss: 0.00185 * 2000, gasWork: 1e6 / 11.3 }) // => 145.484757
 */
export function isothermalFlow(inlet: number, outlet: number, passage: IsothermalPassage): number {
  if (outlet >= inlet) return 0;
  const end = Math.max(outlet, isothermalChoke(inlet, passage.loss));
  const area = (Math.PI / 4) * passage.bore ** 2;
  const resistance = passage.loss + 2 * Math.log(inlet / end);
  return area * Math.sqrt((inlet ** 2 - end ** 2) / (passage.gasWork * resistance));
}

/**
 * Outlet pressure at which isothermal flow through a passage chokes.
 *
 * (P1/P2)^2 - 1 - 2 ln(P1/P2) = K; no lower outlet pressure draws more.
 *
 * @param inlet - absolute pressure at the inlet [Pa abs], > 0
 * @param loss - friction of the whole passage [-], > 0
 * @returns choking pressure at the outlet [Pa abs]
 * @source isothermal choking limit, exit Mach number 1/sqrt k; check value of the open library fluids
 * @example
 * isothermalChoke(1e6, 0.00185 * 2000) // => 389699.732
 */
export function isothermalChoke(inlet: number, loss: number): number {
  const ratio = bracketedRoot((r) => r ** 2 - 1 - 2 * Math.log(r) - loss, 1, 2 + Math.sqrt(loss) * 2, 1e-15);
  return inlet / (ratio ?? 1);
}

/**
 * Inlet pressure that drives a mass flow through a passage into an outlet pressure, and whether it chokes.
 *
 * The outlet cannot fall below (m/A) sqrt(R T); where the room behind it is lower, the passage is choked. Newton's
 * method from above on a curve that is bent one way, so it is sure to converge.
 *
 * @param flow - mass flow [kg/s], >= 0
 * @param outlet - absolute pressure behind the passage [Pa abs], > 0
 * @param passage - bore, loss and gas [record], bore > 0, loss >= 0
 * @returns inlet pressure [Pa abs], and whether the passage is choked [record]
 * @source complete isothermal equation, Crane TP-410
 * @example
 * isothermalInlet(145.484757, 9e5, { bore: 0.5, loss: 3.7, gasWork: 1e6 / 11.3 }) // => {"pressure":999999.999...,"choked":false}
 */
export function isothermalInlet(
  flow: number,
  outlet: number,
  passage: IsothermalPassage,
): { readonly pressure: number; readonly choked: boolean } {
  const sonic = sonicPressure(flow, passage);
  const end = Math.max(outlet, sonic);
  const choked = sonic >= outlet;
  const a = sonic ** 2;
  if (a === 0) return { pressure: end, choked };
  const constant = end ** 2 + a * passage.loss;
  // ln x <= x - 1 turns the equation into a quadratic whose root lies above the one sought.
  let p = a / end + Math.sqrt((a / end) ** 2 + Math.max(0, constant - 2 * a));
  for (let step = 0; step < 60; step += 1) {
    const value = p ** 2 - constant - 2 * a * Math.log(p / end);
    const slope = 2 * p - (2 * a) / p;
    if (slope <= 0) break;
    const change = value / slope;
    if (!(change > 1e-15 * p)) break;
    p -= change;
  }
  return { pressure: Math.max(p, end), choked };
}

/** Pressure at which a mass flow moves at the isothermal speed of sound. */
function sonicPressure(flow: number, { bore, gasWork }: IsothermalPassage): number {
  return (flow / ((Math.PI / 4) * bore ** 2)) * Math.sqrt(gasWork);
}

/** Outlet pressure that a mass flow leaves behind a passage, undefined where the inlet cannot drive it. */
export function isothermalOutlet(
  flow: number,
  inlet: number,
  passage: IsothermalPassage,
): number | undefined {
  const sonic = sonicPressure(flow, passage);
  if (sonic >= inlet) return undefined;
  if (sonic === 0) return inlet;
  const constant = inlet ** 2 - sonic ** 2 * passage.loss;
  const value = (p: number): number => p ** 2 - constant + 2 * sonic ** 2 * Math.log(inlet / p);
  return bracketedRoot(value, sonic, inlet, 0);
}
