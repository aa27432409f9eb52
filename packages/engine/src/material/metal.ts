import { carbonEquivalentIIW } from './carbon-equivalent.ts';
import { type Composition, checkComposition } from './composition.ts';
import { MELTING_DATA } from './melting-data.ts';
import { type MeltingData, meltingEnergyOf } from './melting-energy.ts';
import type { MetalFamily } from './metal-family.ts';
import { METAL_PRACTICE } from './practice.ts';
import type { SourcedAdvice, SourcedNumber } from './sourced.ts';
import { steelFamilyOf } from './steel-family.ts';

/** A metal as the bench needs it: its numbers, what shops do with it, what to beware of. */
export interface Metal {
  readonly family: MetalFamily;
  readonly title: string;
  /** Density at room temperature [kg/m3]. */
  readonly density: SourcedNumber;
  /** Energy to heat a unit volume from 20 degC and melt it [J/m3]. */
  readonly meltingEnergy: SourcedNumber;
  /** What the melting energy is made of. */
  readonly meltingData: MeltingData;
  readonly polarity: SourcedAdvice;
  readonly electrodeType: SourcedAdvice;
  readonly cautions: readonly SourcedAdvice[];
  /** Whether the rows behind the removal law are of this metal. */
  readonly depthLawFitted: boolean;
}

const TITLES: Readonly<Record<MetalFamily, string>> = {
  carbon_steel: 'Carbon steel',
  low_alloy_steel: 'Low-alloy steel',
  austenitic_stainless: 'Austenitic stainless steel',
  cast_iron: 'Cast iron',
  copper_alloy: 'Copper and its alloys',
  nickel_alloy: 'Nickel and its alloys',
  manganese_steel: 'Manganese steel',
};

/** The rows are of carbon steel; a low-alloy steel melts with the same energy within its range. */
const FITTED: ReadonlySet<MetalFamily> = new Set(['carbon_steel', 'low_alloy_steel']);

const NOT_FITTED: SourcedAdvice = {
  text: 'The removal law was fitted to carbon steel. Here only the melting energy is changed: try it on scrap first.',
  source: 'the operating rows behind the law, TWI Job Knowledge 12, are of carbon steel',
  provenance: 'derived',
};

/** Rule of thumb on preheat by carbon equivalent, for the two families it is meant for. */
function preheatCaution(composition: Composition): SourcedAdvice | undefined {
  const equivalent = carbonEquivalentIIW(composition);
  if (equivalent < 0.35) return undefined;
  const asks = equivalent > 0.55 ? 'preheat and heat treatment after welding are' : 'preheat is';
  return {
    text: `Carbon equivalent ${equivalent.toFixed(2)} %: ${asks} usually asked before thermal work; thickness and hydrogen still count.`,
    source: 'API RP 577 10.8.2, rule of thumb',
    provenance: 'confirmed',
  };
}

function compositionCautions(family: MetalFamily, composition: Composition): readonly SourcedAdvice[] {
  const checked = checkComposition(composition);
  if (!checked.ok) throw new RangeError(checked.issues[0]?.message);
  const read = steelFamilyOf(composition);
  const cautions: SourcedAdvice[] = [];
  if (read.ok && read.value !== family) {
    cautions.push({
      text: `The composition reads as ${TITLES[read.value].toLowerCase()}, not as ${TITLES[family].toLowerCase()}: check which is right.`,
      source: 'bounds of the steel families',
      provenance: 'derived',
    });
  }
  const preheat = FITTED.has(family) ? preheatCaution(composition) : undefined;
  return preheat ? [...cautions, preheat] : cautions;
}

/**
 * What is known of a family of metals: density, melting energy, polarity, electrode type and cautions.
 *
 * The numbers are typical of the family; each carries its source and its spread. A composition adds cautions:
 * where it reads as another family, and the preheat rule by carbon equivalent for carbon and low-alloy steel. A
 * composition that no metal can have is a bug of the caller and throws: check it with steelFamilyOf first.
 *
 * @param family - family of the metal [text], one of the MetalFamily names
 * @param composition - mass percents [record], each from 0 to 100 and at most 100 together; may be left out
 * @returns numbers with their sources, and advice [record]
 * @source EN 1993-1-2 (confirmed); Mills 2002 (confirmed); handbook values (memory); common practice, no source
 * @example
 * metalOf('carbon_steel').meltingEnergy.value // => 1.014270e10
 * metalOf('copper_alloy').depthLawFitted // => false
 */
export function metalOf(family: MetalFamily, composition?: Composition): Metal {
  const meltingData = MELTING_DATA[family];
  const { polarity, electrodeType, cautions } = METAL_PRACTICE[family];
  const depthLawFitted = FITTED.has(family);
  return {
    family,
    title: TITLES[family],
    density: meltingData.density,
    meltingEnergy: meltingEnergyOf(meltingData),
    meltingData,
    polarity,
    electrodeType,
    cautions: [
      ...(composition ? compositionCautions(family, composition) : []),
      ...cautions,
      ...(depthLawFitted ? [] : [NOT_FITTED]),
    ],
    depthLawFitted,
  };
}
