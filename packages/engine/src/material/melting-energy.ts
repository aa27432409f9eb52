import type { SourcedNumber } from './sourced.ts';

const ROOM = 293.15;

/** What the energy to melt a metal is made of. */
export interface MeltingData {
  /** Density at room temperature [kg/m3]. */
  readonly density: SourcedNumber;
  /** Mean specific heat from 20 degC to the melting point [J/(kg K)]. */
  readonly specificHeat: SourcedNumber;
  /** Temperature at which the metal is all molten [K]. */
  readonly meltingPoint: SourcedNumber;
  /** Latent heat of melting [J/kg]. */
  readonly latentHeat: SourcedNumber;
}

function energy(density: number, specificHeat: number, meltingPoint: number, latentHeat: number): number {
  return density * (specificHeat * (meltingPoint - ROOM) + latentHeat);
}

function end(number: SourcedNumber, which: 'min' | 'max'): number {
  return number.range?.[which] ?? number.value;
}

/**
 * Energy that heats a unit volume of metal from 20 degC and melts it.
 *
 * e = density (c (Tm - 293.15 K) + L), with the mean specific heat c to the melting point Tm and the latent heat
 * L; per volume of cold metal, without superheat. Its range takes all four at their least and at their most.
 *
 * @param data - density, mean specific heat, melting point and latent heat [record], each > 0 and the melting point > 293.15 K
 * @returns energy per volume with its range, derived from the four [J/m3]
 * @source derived
 * @example
 * meltingEnergyOf({ density: { value: 7850 }, specificHeat: { value: 690.6 }, meltingPoint: { value: 1773.15 }, latentHeat: { value: 270000 } }).value // => 1.01429e10
 */
export function meltingEnergyOf(data: MeltingData): SourcedNumber {
  const { density, specificHeat, meltingPoint, latentHeat } = data;
  const at = (which: 'min' | 'max'): number =>
    energy(end(density, which), end(specificHeat, which), end(meltingPoint, which), end(latentHeat, which));
  return {
    value: energy(density.value, specificHeat.value, meltingPoint.value, latentHeat.value),
    unit: 'J/m3',
    source: 'density x (mean specific heat x rise from 20 degC to the melting point + latent heat)',
    provenance: 'derived',
    range: { min: at('min'), max: at('max') },
  };
}
