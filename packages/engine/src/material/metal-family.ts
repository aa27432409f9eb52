/** Families of metal that are told apart for gouging. */
export type MetalFamily =
  | 'carbon_steel'
  | 'low_alloy_steel'
  | 'austenitic_stainless'
  | 'cast_iron'
  | 'copper_alloy'
  | 'nickel_alloy'
  | 'manganese_steel';

/** Every family, in the order forms list them. */
export const METAL_FAMILIES: readonly MetalFamily[] = [
  'carbon_steel',
  'low_alloy_steel',
  'austenitic_stainless',
  'cast_iron',
  'copper_alloy',
  'nickel_alloy',
  'manganese_steel',
];
