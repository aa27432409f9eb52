import type { MetalFamily } from './metal-family.ts';
import type { SourcedAdvice } from './sourced.ts';

/** What shops do with a family of metal. */
export interface MetalPractice {
  readonly polarity: SourcedAdvice;
  readonly electrodeType: SourcedAdvice;
  readonly cautions: readonly SourcedAdvice[];
}

const UNSOURCED = 'common practice, no source';
const custom = (text: string): SourcedAdvice => ({ text, source: UNSOURCED, provenance: 'common practice' });

const POSITIVE = custom('Direct current, electrode positive.');
const DC_ELECTRODE = custom('Copper-coated direct-current carbon electrodes.');
const GRIND_SKIN = custom(
  'Grind the groove to bright metal before welding: carbon from the electrode is left in metal that melted and stayed.',
);

/** Polarity, electrode type and cautions by family. */
export const METAL_PRACTICE: Readonly<Record<MetalFamily, MetalPractice>> = {
  carbon_steel: {
    polarity: {
      text: 'Direct current, electrode positive.',
      source: 'TWI Job Knowledge 12, operating data',
      provenance: 'memory',
    },
    electrodeType: DC_ELECTRODE,
    cautions: [GRIND_SKIN],
  },
  low_alloy_steel: {
    polarity: POSITIVE,
    electrodeType: DC_ELECTRODE,
    cautions: [
      GRIND_SKIN,
      custom(
        'Preheat as for welding the same steel: the heated rim hardens and can crack when it cools fast.',
      ),
    ],
  },
  austenitic_stainless: {
    polarity: POSITIVE,
    electrodeType: DC_ELECTRODE,
    cautions: [
      {
        text: 'Metal that melted and was not blown out picks up carbon, which sensitises it, and nitrogen, which lowers its ferrite.',
        source: 'Kotecki, Stainless Q&A, Welding Journal, September 2008',
        provenance: 'confirmed',
      },
      custom('Grind off dross and the film that froze again, with wheels kept for stainless.'),
      {
        text: 'The fume holds chromium(VI) and nickel: extract it at the source and protect the breath of all nearby.',
        source: 'published exposure limits for welding fume, recalled',
        provenance: 'memory',
      },
    ],
  },
  cast_iron: {
    polarity: custom(
      'Alternating current, or direct current with the electrode negative, for alternating-current electrodes; electrode positive near the top of the range for direct-current ones. Try it on scrap.',
    ),
    electrodeType: custom('Alternating-current carbon electrodes, or copper-coated direct-current ones.'),
    cautions: [
      custom(
        'Crack risk: preheat evenly, gouge in short lengths and let the casting cool slowly under cover.',
      ),
      {
        text: 'For oxy-fuel gouging of cast iron 400 to 450 degC of preheat is asked; take it as a guide, not as a rule for the arc.',
        source: 'TWI Job Knowledge 8',
        provenance: 'confirmed',
      },
    ],
  },
  copper_alloy: {
    polarity: custom(
      'Direct current, electrode negative, near the top of the range; or alternating current with electrodes made for it. Try it on scrap.',
    ),
    electrodeType: custom('Alternating-current carbon electrodes, or copper-coated direct-current ones.'),
    cautions: [
      custom(
        'Copper leads heat away many times faster than steel: expect a shallower groove, preheat thick parts.',
      ),
      custom(
        'The removal law was not fitted to copper: gauge the first pass on scrap of the same thickness.',
      ),
      custom('Copper and zinc fume: extract it at the source.'),
    ],
  },
  nickel_alloy: {
    polarity: custom(
      'Alternating current, or direct current with the electrode negative, with alternating-current electrodes. Try it on scrap.',
    ),
    electrodeType: custom('Alternating-current carbon electrodes.'),
    cautions: [
      custom(
        'Carbon and sulphur harm nickel alloys: grind the groove to bright metal with clean wheels before welding.',
      ),
      custom('Nickel fume: extract it at the source.'),
    ],
  },
  manganese_steel: {
    polarity: POSITIVE,
    electrodeType: DC_ELECTRODE,
    cautions: [
      custom(
        'Keep it cool: held hot, manganese steel turns brittle. Do not preheat; keep the metal 25 mm from the groove below about 260 degC, with short passes, pauses or water.',
      ),
      custom('The fume holds much manganese: extract it at the source.'),
    ],
  },
};
