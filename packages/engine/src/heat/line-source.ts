import { bracketedRoot } from '../numeric/index.ts';
import { ZERO_CELSIUS } from '../quantity/index.ts';

/** A plate of constant properties with closed faces, and the line of heat put on one of them. */
export interface LineOnPlate {
  /** Heat per length of the line [J/m]. */
  readonly energy: number;
  /** Thickness of the plate [m]. */
  readonly thickness: number;
  /** Thermal conductivity [W/(m K)]. */
  readonly conductivity: number;
  /** Heat capacity per volume [J/(m3 K)]. */
  readonly heatCapacity: number;
}

/** Terms below this share of the sum are left out [-]. */
const NEGLIGIBLE = 1e-16;

/**
 * Rise of temperature after a line of heat was put on the face of a plate all at once.
 *
 * dT = E/(2 pi k t) exp(-y^2/4at) sum exp(-(z - 2nd)^2/4at), all n; where the plate has evened out the same is
 * summed as a cosine series. Constant properties, closed faces, no latent heat.
 *
 * @param line - heat, plate and its properties [record], each > 0
 * @param across - distance from the line along the plate [m], any
 * @param below - depth below the heated face [m], 0 to the thickness
 * @param time - time since the heat was put in [s], > 0
 * @returns rise [K]
 * @source Carslaw and Jaeger ch. 10, images (derived)
 * @example
 * lineSourceRise({ energy: 500000, thickness: 0.012, conductivity: 40, heatCapacity: 4e6 }, 0.01, 0.006, 5) // => 252.05228
 */
export function lineSourceRise(line: LineOnPlate, across: number, below: number, time: number): number {
  const { energy, thickness, conductivity, heatCapacity } = line;
  const spread = (4 * conductivity * time) / heatCapacity;
  const sideways = Math.exp((-across * across) / spread);
  if (spread < thickness * thickness) {
    let sum = Math.exp((-below * below) / spread);
    for (let n = 1; ; n += 1) {
      const pair =
        Math.exp(-((below - 2 * n * thickness) ** 2) / spread) +
        Math.exp(-((below + 2 * n * thickness) ** 2) / spread);
      sum += pair;
      if (pair <= NEGLIGIBLE * sum) break;
    }
    return (energy / (2 * Math.PI * conductivity * time)) * sideways * sum;
  }
  let sum = 1;
  const decay = ((Math.PI / thickness) ** 2 * spread) / 4;
  for (let n = 1; ; n += 1) {
    const term = 2 * Math.exp(-n * n * decay);
    sum += term * Math.cos((n * Math.PI * below) / thickness);
    if (term <= NEGLIGIBLE) break;
  }
  return (energy / (heatCapacity * thickness * Math.sqrt(Math.PI * spread))) * sideways * sum;
}

/**
 * Cooling time from 800 to 500 degC on the line itself, from the exact solution for a plate.
 *
 * Right through the transition from thick to thin, where the two formulas of EN 1011-2 meet at an angle.
 *
 * @param line - heat, plate and its properties [record], each > 0
 * @param start - temperature of the plate before [K], below 773
 * @returns cooling time [s]
 * @source Carslaw and Jaeger ch. 10, images (derived)
 * @example
 * coolingTimeOfLine({ energy: 1.5e6, thickness: 0.018, conductivity: 40, heatCapacity: 4e6 }, 293.15) // => 7.619429
 */
export function coolingTimeOfLine(line: LineOnPlate, start: number): number {
  return timeAtRise(line, ZERO_CELSIUS + 500 - start) - timeAtRise(line, ZERO_CELSIUS + 800 - start);
}

/** Time at which the falling temperature on the line passes a rise; solved over the logarithm of time. */
function timeAtRise(line: LineOnPlate, rise: number): number {
  const { energy, thickness, conductivity, heatCapacity } = line;
  if (!(energy > 0 && rise > 0)) return Number.NaN;
  // The half-space is the fastest, the thin plate the slowest: the plate lies between their sum and either.
  const thick = energy / (2 * Math.PI * conductivity * rise);
  const thin = (energy / (thickness * rise)) ** 2 / (4 * Math.PI * conductivity * heatCapacity);
  const missing = (log: number): number => Math.log(lineSourceRise(line, 0, 0, Math.exp(log)) / rise);
  const root = bracketedRoot(
    missing,
    Math.log(Math.max(thick, thin) / 2),
    Math.log(2 * (thick + thin)),
    1e-12,
  );
  return root === undefined ? Number.NaN : Math.exp(root);
}
