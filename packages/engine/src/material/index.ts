export {
  carbonEquivalentCEN,
  carbonEquivalentCET,
  carbonEquivalentIIW,
  crackingParameterPcm,
} from './carbon-equivalent.ts';
export { carbonSteelEnthalpy } from './carbon-steel-enthalpy.ts';
export { type Composition, checkComposition, type FullComposition, fullComposition } from './composition.ts';
export { type MeltingData, meltingEnergyOf } from './melting-energy.ts';
export { type Metal, metalOf } from './metal.ts';
export { type FumeElement, METAL_FAMILIES, type MetalFamily } from './metals/index.ts';
export type { SourcedAdvice, SourcedNumber } from './sourced.ts';
export { stainlessEnthalpy } from './stainless-enthalpy.ts';
export { steelFamilyOf } from './steel-family.ts';
export { type ThermalMetal, thermalOf } from './thermal.ts';
