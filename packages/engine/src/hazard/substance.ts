import { type Composition, type FumeElement, type MetalFamily, metalOf } from '../material/index.ts';

/** What the air of a gouging place may carry. */
export type Substance =
  | 'iron_oxide'
  | 'copper'
  | 'manganese'
  | 'chromium_vi'
  | 'nickel'
  | 'lead'
  | 'zinc_oxide'
  | 'cadmium'
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
  lead: 'Lead',
  zinc_oxide: 'Zinc oxide fume',
  cadmium: 'Cadmium',
  carbon_monoxide: 'Carbon monoxide',
  nitrogen_dioxide: 'Nitrogen dioxide',
  ozone: 'Ozone',
};

/** Coating of the metal; null where it is not known whether there is one. */
export type Coating = 'none' | 'chromium' | 'zinc' | 'lead' | 'cadmium' | 'other' | null;

/** What the fume of a coating holds. */
const OF_COATING: Readonly<Partial<Record<NonNullable<Coating>, ExpectedSubstance>>> = {
  chromium: { substance: 'chromium_vi', why: 'the coating holds chromium' },
  zinc: { substance: 'zinc_oxide', why: 'the coating holds zinc' },
  lead: { substance: 'lead', why: 'the coating holds lead' },
  cadmium: { substance: 'cadmium', why: 'the coating holds cadmium' },
};

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

/** What the fume of an element counts as. */
const OF_ELEMENT: Readonly<Record<FumeElement, Substance>> = {
  Fe: 'iron_oxide',
  Mn: 'manganese',
  Cr: 'chromium_vi',
  Ni: 'nickel',
};

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
  const { fumeOf, fumePossible, copperBased } = metalOf(family);
  const found: ExpectedSubstance[] = [
    ...fumeOf.map((element) => ({
      substance: OF_ELEMENT[element],
      why: element === 'Fe' ? `the metal is ${metal}` : `part of ${metal}`,
    })),
    ...statedAlloys(composition),
    ...fumePossible
      // only a composition that states none of it lets it off
      .filter((element) => element === 'Fe' || composition[element] !== 0)
      .map((element) => ({
        substance: OF_ELEMENT[element],
        why: `possible in ${metal}, unless the composition says otherwise`,
      })),
    {
      substance: 'copper',
      why: copperBased ? `the metal is ${metal}` : 'the copper coating of the electrode burns off',
    },
    ...[coating === null ? undefined : OF_COATING[coating]].filter((one) => one !== undefined),
    ...GASES,
  ];
  return found.filter(
    ({ substance }, index) => found.findIndex((one) => one.substance === substance) === index,
  );
}

function statedAlloys({ Cr = 0, Ni = 0 }: Composition): ExpectedSubstance[] {
  return [
    ...(Cr > 0
      ? [{ substance: 'chromium_vi' as const, why: `the composition states ${Cr} % chromium` }]
      : []),
    ...(Ni > 0 ? [{ substance: 'nickel' as const, why: `the composition states ${Ni} % nickel` }] : []),
  ];
}
