import type { Composition, MetalFamily } from '../material/index.ts';

/** What the air of a gouging place may carry. */
export type Substance =
  | 'iron_oxide'
  | 'copper'
  | 'manganese'
  | 'chromium_vi'
  | 'nickel'
  | 'carbon_monoxide'
  | 'nitrogen_dioxide'
  | 'ozone';

/** Names as they are written. */
export const SUBSTANCE_NAMES: Readonly<Record<Substance, string>> = {
  iron_oxide: 'Iron oxide fume',
  copper: 'Copper fume',
  manganese: 'Manganese fume',
  chromium_vi: 'Hexavalent chromium',
  nickel: 'Nickel, metal and insoluble',
  carbon_monoxide: 'Carbon monoxide',
  nitrogen_dioxide: 'Nitrogen dioxide',
  ozone: 'Ozone',
};

/** Coating of the metal; null where it is not known whether there is one. */
export type Coating = 'none' | 'chromium' | 'zinc' | 'lead' | 'other' | null;

/** A substance to reckon with, and why. */
export interface ExpectedSubstance {
  readonly substance: Substance;
  readonly why: string;
}

const GASES: readonly ExpectedSubstance[] = [
  { substance: 'carbon_monoxide', why: 'the carbon electrode burns in the air jet' },
  { substance: 'nitrogen_dioxide', why: 'the arc makes it from the air' },
  { substance: 'ozone', why: 'the arc makes it from the air' },
];

const IRON_BASED: ReadonlySet<MetalFamily> = new Set([
  'carbon_steel',
  'low_alloy_steel',
  'austenitic_stainless',
  'cast_iron',
  'manganese_steel',
]);

/** What alloys of a family are made of beside their base. */
const FAMILY_ALLOYS: Readonly<Partial<Record<MetalFamily, readonly Substance[]>>> = {
  austenitic_stainless: ['manganese', 'chromium_vi', 'nickel'],
  nickel_alloy: ['chromium_vi', 'nickel'],
  carbon_steel: ['manganese'],
  low_alloy_steel: ['manganese'],
  manganese_steel: ['manganese'],
  cast_iron: ['manganese'],
};

/** What alloys of a family often hold, so that only a composition that states none of it lets it off. */
const POSSIBLE_ALLOYS: Readonly<Partial<Record<MetalFamily, readonly AlloyedSubstance[]>>> = {
  low_alloy_steel: ['chromium_vi', 'nickel'],
  copper_alloy: ['nickel'],
};

type AlloyedSubstance = 'chromium_vi' | 'nickel';

/**
 * Substances to reckon with when a metal is gouged, each with its reason.
 *
 * The base metal and its alloys, the copper coating of the electrode, the coating of the plate, and the gases of
 * the arc. Chromium and nickel that a composition states count whatever the family; in families that often hold
 * them they count unless the composition states 0.
 *
 * @param family - family of the metal [text], one of the MetalFamily names
 * @param composition - mass percents as stated [record], may be empty
 * @param coating - coating of the plate [text], one of the Coating names, or null where it is not known
 * @returns substances, each once [list]
 * @source trade knowledge, no source; HSE WL16 and API Publ 4629 on metals in gouging fume (confirmed)
 * @example
 * expectedSubstances('carbon_steel', {}, 'none').map(({ substance }) => substance).slice(0, 3) // => ["iron_oxide","manganese","copper"]
 */
export function expectedSubstances(
  family: MetalFamily,
  composition: Composition,
  coating: Coating,
): readonly ExpectedSubstance[] {
  const metal = family.replaceAll('_', ' ');
  const found: ExpectedSubstance[] = [
    ...(IRON_BASED.has(family) ? [{ substance: 'iron_oxide' as const, why: `the metal is ${metal}` }] : []),
    ...(FAMILY_ALLOYS[family] ?? []).map((substance) => ({ substance, why: `part of ${metal}` })),
    ...statedAlloys(composition),
    ...possibleAlloys(family, composition).map((substance) => ({
      substance,
      why: `possible in ${metal}, unless the composition says otherwise`,
    })),
    {
      substance: 'copper',
      why:
        family === 'copper_alloy' ? `the metal is ${metal}` : 'the copper coating of the electrode burns off',
    },
    ...(coating === 'chromium'
      ? [{ substance: 'chromium_vi' as const, why: 'the coating holds chromium' }]
      : []),
    ...GASES,
  ];
  return found.filter(
    ({ substance }, index) => found.findIndex((one) => one.substance === substance) === index,
  );
}

function possibleAlloys(family: MetalFamily, { Cr, Ni }: Composition): readonly AlloyedSubstance[] {
  const stated = { chromium_vi: Cr, nickel: Ni };
  return (POSSIBLE_ALLOYS[family] ?? []).filter((substance) => stated[substance] !== 0);
}

function statedAlloys({ Cr = 0, Ni = 0 }: Composition): ExpectedSubstance[] {
  return [
    ...(Cr > 0
      ? [{ substance: 'chromium_vi' as const, why: `the composition states ${Cr} % chromium` }]
      : []),
    ...(Ni > 0 ? [{ substance: 'nickel' as const, why: `the composition states ${Ni} % nickel` }] : []),
  ];
}
