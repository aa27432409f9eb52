import { AUSTENITIC_STAINLESS } from './austenitic-stainless.ts';
import { CARBON_STEEL } from './carbon-steel.ts';
import { CAST_IRON } from './cast-iron.ts';
import { COPPER_ALLOY } from './copper-alloy.ts';
import { LOW_ALLOY_STEEL } from './low-alloy-steel.ts';
import { MANGANESE_STEEL } from './manganese-steel.ts';
import type { MetalData } from './metal-data.ts';
import { NICKEL_ALLOY } from './nickel-alloy.ts';

/** Every family of metals, in the order forms list them; a new one is its file and its line here. */
export const METALS = {
  carbon_steel: CARBON_STEEL,
  low_alloy_steel: LOW_ALLOY_STEEL,
  austenitic_stainless: AUSTENITIC_STAINLESS,
  cast_iron: CAST_IRON,
  copper_alloy: COPPER_ALLOY,
  nickel_alloy: NICKEL_ALLOY,
  manganese_steel: MANGANESE_STEEL,
} as const satisfies Readonly<Record<string, MetalData>>;

/** Families of metal that are told apart for gouging. */
export type MetalFamily = keyof typeof METALS;

/** Every family, in the order forms list them. */
export const METAL_FAMILIES = Object.keys(METALS) as readonly MetalFamily[];

export type { FumeElement, MetalData, ThermalData } from './metal-data.ts';
