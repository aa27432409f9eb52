import { fromUnit, inUnit, ZERO_CELSIUS } from '../quantity/index.ts';
/** Start temperature above which the formulas are not used: they fail as it nears 500 degC (judgement) [K]. */
export const COOLING_START_MOST = ZERO_CELSIUS + 300;

function kJPerMm(heatInput: number): number {
  return inUnit(heatInput, 'kJ/mm');
}

/**
 * Cooling time from 800 to 500 degC in a plate so thick that heat flows three ways, unalloyed and low-alloy steel.
 *
 * t = (6700 - 5 T0) Q [1/(500 - T0) - 1/(800 - T0)] F, T0 in degC, Q in kJ/mm.
 *
 * @param heatInput - heat given to the plate per length [J/m], >= 0
 * @param start - temperature of the plate before [K], below 773
 * @param shape - shape factor F3 [-], 0.67 to 1; 1 for a run on a plate
 * @returns cooling time [s]
 * @source EN 1011-2:2001 Annex D (memory)
 * @example
 * coolingTimeThick(1.5e6, 373.15, 1) // => 9.9642857
 */
export function coolingTimeThick(heatInput: number, start: number, shape: number): number {
  const t0 = start - ZERO_CELSIUS;
  return (6700 - 5 * t0) * kJPerMm(heatInput) * (1 / (500 - t0) - 1 / (800 - t0)) * shape;
}

/**
 * Cooling time from 800 to 500 degC in a plate so thin that heat flows two ways, unalloyed and low-alloy steel.
 *
 * t = (4300 - 4.3 T0) 1e5 (Q/d)^2 [1/(500 - T0)^2 - 1/(800 - T0)^2] F, T0 in degC, Q in kJ/mm, d in mm.
 *
 * @param heatInput - heat given to the plate per length [J/m], >= 0
 * @param thickness - thickness of the plate [m], > 0
 * @param start - temperature of the plate before [K], below 773
 * @param shape - shape factor F2 [-], 0.45 to 1; 1 for a run on a plate
 * @returns cooling time [s]
 * @source EN 1011-2:2001 Annex D (memory)
 * @example
 * coolingTimeThin(1.5e6, 0.012, 373.15, 1) // => 25.452408
 */
export function coolingTimeThin(heatInput: number, thickness: number, start: number, shape: number): number {
  const t0 = start - ZERO_CELSIUS;
  const perThickness = kJPerMm(heatInput) / inUnit(thickness, 'mm');
  return (4300 - 4.3 * t0) * 1e5 * perThickness ** 2 * ((500 - t0) ** -2 - (800 - t0) ** -2) * shape;
}

/**
 * Thickness at which the two cooling times are the same, for equal shape factors.
 *
 * dt = sqrt{(4300 - 4.3 T0)/(6700 - 5 T0) 1e5 Q [1/(500 - T0) + 1/(800 - T0)]}, T0 in degC, Q in kJ/mm, dt in mm.
 *
 * @param heatInput - heat given to the plate per length [J/m], >= 0
 * @param start - temperature of the plate before [K], below 773
 * @returns transition thickness [m]
 * @source EN 1011-2:2001 Annex D (memory)
 * @example
 * transitionThickness(1.5e6, 373.15) // => 0.019178851
 */
export function transitionThickness(heatInput: number, start: number): number {
  const t0 = start - ZERO_CELSIUS;
  const squared =
    ((4300 - 4.3 * t0) / (6700 - 5 * t0)) * 1e5 * kJPerMm(heatInput) * (1 / (500 - t0) + 1 / (800 - t0));
  return fromUnit(Math.sqrt(squared), 'mm');
}
