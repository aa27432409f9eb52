import { stainlessEnthalpy } from '../stainless-enthalpy.ts';
import type { MetalData } from './metal-data.ts';
import {
  custom,
  DC_ELECTRODE,
  density,
  FROZEN,
  interpassMost,
  latentHeat,
  MELT_HEAT,
  meanOf,
  meltingPoint,
  POSITIVE,
  stainlessConductivity,
} from './sourced-values.ts';

/** Austenitic stainless steel. */
export const AUSTENITIC_STAINLESS: MetalData = {
  title: 'Austenitic stainless steel',
  depthLawFitted: false,
  melting: {
    density: density(7900, [7850, 8030]),
    specificHeat: meanOf(
      stainlessEnthalpy,
      1450,
      0.05,
      'Mills 2002 fit for type 316 integrated, carried on from 1300 to 1450 degC',
    ),
    meltingPoint: meltingPoint(1450, [1400, 1455]),
    latentHeat: latentHeat(265e3, [250e3, 290e3]),
  },
  thermal: {
    solid: stainlessEnthalpy,
    conductivity: stainlessConductivity,
    meltingRange: 50,
    liquidHeat: 820,
    source: [
      {
        text: 'fits to data of type 316 after Mills 2002, from 25 to 1300 degC, within 10 %',
        provenance: 'confirmed',
      },
      {
        text: 'specific heat carried on to 1450 degC; 265 kJ/kg taken up from 1400 to 1450 degC',
        provenance: 'derived',
      },
      MELT_HEAT,
      FROZEN,
    ],
  },
  polarity: POSITIVE,
  poles: ['electrode_positive'],
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
  heatCautions: [],
  hardens: false,
  prequalified: false,
  interpassMost: interpassMost(
    150,
    'usual for austenitic stainless steel, so that it is neither sensitised nor cracks hot',
    'memory',
  ),
  fumeOf: ['Fe', 'Mn', 'Cr', 'Ni'],
  fumePossible: [],
  copperBased: false,
  ventilation: 'high',
};
