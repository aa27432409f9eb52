import { carbonEquivalentIIW } from './carbon-equivalent.ts';
import { type Composition, checkComposition } from './composition.ts';
import { type MeltingData, meltingEnergyOf } from './melting-energy.ts';
import { METALS, type MetalData, type MetalFamily } from './metals/index.ts';
import type { SourcedAdvice, SourcedNumber } from './sourced.ts';
import { steelFamilyOf } from './steel-family.ts';

/** A metal as the bench needs it: its numbers, what shops do with it, what to beware of. */
export interface Metal extends Omit<MetalData, 'melting' | 'thermal'> {
  readonly family: MetalFamily;
  /** Density at room temperature [kg/m3]. */
  readonly density: SourcedNumber;
  /** Energy to heat a unit volume from 20 degC and melt it [J/m3]. */
  readonly meltingEnergy: SourcedNumber;
  /** What the melting energy is made of. */
  readonly meltingData: MeltingData;
}

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
      text: `The composition reads as ${METALS[read.value].title.toLowerCase()}, not as ${METALS[family].title.toLowerCase()}: check which is right.`,
      source: 'bounds of the steel families',
      provenance: 'derived',
    });
  }
  const preheat = METALS[family].hardens ? preheatCaution(composition) : undefined;
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
  const { melting, thermal: _table, ...data } = METALS[family] as MetalData;
  return {
    ...data,
    family,
    density: melting.density,
    meltingEnergy: meltingEnergyOf(melting),
    meltingData: melting,
    cautions: [
      ...(composition ? compositionCautions(family, composition) : []),
      ...data.cautions,
      ...(data.depthLawFitted ? [] : [NOT_FITTED]),
    ],
  };
}
