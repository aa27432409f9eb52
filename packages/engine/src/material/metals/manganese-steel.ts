import type { MetalData } from './metal-data.ts';
import {
  constantThermal,
  custom,
  DC_ELECTRODE,
  density,
  FROZEN,
  interpassMost,
  latentHeat,
  meanHeat,
  meltingPoint,
  POSITIVE,
  stainlessConductivity,
} from './sourced-values.ts';

const HEAT = meanHeat(
  640,
  [600, 680],
  'mean to the melting point, above the 520 J/(kg K) at room temperature',
);

/** Austenitic manganese steel. */
export const MANGANESE_STEEL: MetalData = {
  title: 'Manganese steel',
  depthLawFitted: false,
  melting: {
    density: density(7870, [7800, 7900]),
    specificHeat: HEAT,
    meltingPoint: meltingPoint(1390, [1340, 1420]),
    latentHeat: latentHeat(260e3, [240e3, 275e3]),
  },
  thermal: {
    ...constantThermal(HEAT, 0, 50, ''),
    conductivity: stainlessConductivity,
    source: [
      {
        text: 'austenitic as stainless steel is: the conductivity of type 316 is taken',
        provenance: 'derived',
      },
      { text: 'mean specific heat to the melting point, handbook values', provenance: 'memory' },
      FROZEN,
    ],
  },
  polarity: POSITIVE,
  poles: ['electrode_positive'],
  electrodeType: DC_ELECTRODE,
  cautions: [
    custom(
      'Keep it cool: held hot, manganese steel turns brittle. Do not preheat; keep the metal 25 mm from the groove below about 260 degC, with short passes, pauses or water.',
    ),
    custom('The fume holds much manganese: extract it at the source.'),
  ],
  heatCautions: [],
  hardens: false,
  prequalified: false,
  interpassMost: interpassMost(
    260,
    'held hotter, manganese steel turns brittle (common practice, no source)',
  ),
  fumeOf: ['Fe', 'Mn'],
  fumePossible: [],
  copperBased: false,
  ventilation: 'high',
};
