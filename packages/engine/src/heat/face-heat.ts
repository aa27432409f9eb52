import type { ThermalMetal } from '../material/index.ts';

/** Place of a temperature in the metal's table. */
function placeOf({ enthalpy, start, step }: ThermalMetal, temperature: number): number {
  return Math.min(enthalpy.length - 1, Math.max(0, Math.round((temperature - start) / step)));
}

/**
 * Heat that brings the face of a metal to melting, per area and root of the time it takes.
 *
 * An even flux on a thick plate heats its face by 2 F/k sqrt(a t/pi); so the heat is (Ts - T0) sqrt(pi k c t/4),
 * with the mean conductivity and heat capacity from the start up to the solidus.
 *
 * @param metal - the metal's table [record], from `thermalOf`
 * @param start - temperature of the plate before [K], below the solidus
 * @returns heat per area and root of time [J/(m2 s^0.5)]
 * @source Carslaw and Jaeger 2.9 (derived), with mean properties
 * @example
 * faceHeat(thermalOf('carbon_steel'), 293.15) // => 17333343.8
 */
export function faceHeat(metal: ThermalMetal, start: number): number {
  const low = placeOf(metal, start);
  const high = placeOf(metal, metal.solidus);
  if (high <= low) return 0;
  const slice = metal.conductivity.subarray(low, high + 1);
  const conductivity = slice.reduce((sum, value) => sum + value, 0) / slice.length;
  const rise = (high - low) * metal.step;
  const heatCapacity = (metal.enthalpy[high]! - metal.enthalpy[low]!) / rise;
  return rise * Math.sqrt((Math.PI * conductivity * heatCapacity) / 4);
}
