import type { MetalData } from './metal-data.ts';
import {
  AC_OR_DC_ELECTRODE,
  constantThermal,
  custom,
  density,
  interpassMost,
  latentHeat,
  meanHeat,
  meltingPoint,
} from './sourced-values.ts';

const HEAT = meanHeat(
  425,
  [400, 450],
  'mean to the melting point, above the 385 J/(kg K) at room temperature',
);

/** Copper and its alloys, as pure copper. */
export const COPPER_ALLOY: MetalData = {
  title: 'Copper and its alloys',
  depthLawFitted: false,
  melting: {
    density: density(8960, [8300, 8960]),
    specificHeat: HEAT,
    meltingPoint: meltingPoint(
      1085,
      [900, 1240],
      'pure copper; brasses and bronzes lower, copper-nickels higher',
    ),
    latentHeat: latentHeat(205e3, [180e3, 240e3]),
  },
  thermal: constantThermal(
    HEAT,
    401,
    20,
    'pure copper: 401 W/(m K) at room temperature; copper-nickels conduct 10 to 30 % of that, so their plate gets hotter near the groove',
  ),
  polarity: custom(
    'Direct current, electrode negative, near the top of the range; or alternating current with electrodes made for it. Try it on scrap.',
  ),
  poles: ['electrode_negative'],
  electrodeType: AC_OR_DC_ELECTRODE,
  cautions: [
    custom(
      'Copper leads heat away many times faster than steel: expect a shallower groove, preheat thick parts.',
    ),
    custom('The removal law was not fitted to copper: gauge the first pass on scrap of the same thickness.'),
    custom('Copper and zinc fume: extract it at the source.'),
  ],
  heatCautions: [
    custom(
      'Conduction is that of pure copper; brasses, bronzes and copper-nickels conduct far less and get hotter beside the groove.',
    ),
  ],
  hardens: false,
  prequalified: false,
  interpassMost: interpassMost(
    250,
    'judgement, no source: thick copper is kept hotter, copper-nickel below 150 degC',
    'derived',
  ),
  fumeOf: [],
  fumePossible: ['Ni'],
  copperBased: true,
  ventilation: null,
};
