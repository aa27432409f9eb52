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
  650,
  [600, 720],
  'mean to the melting point, above the 500 J/(kg K) at room temperature',
);

/** Grey cast iron. */
export const CAST_IRON: MetalData = {
  title: 'Cast iron',
  depthLawFitted: false,
  melting: {
    density: density(7200, [6900, 7400]),
    specificHeat: HEAT,
    meltingPoint: meltingPoint(1175, [1130, 1260]),
    latentHeat: latentHeat(220e3, [210e3, 240e3]),
  },
  thermal: constantThermal(
    HEAT,
    50,
    50,
    'grey cast iron, typical: 50 W/(m K) at room temperature, mean specific heat to the melting point',
  ),
  polarity: custom(
    'Alternating current, or direct current with the electrode negative, for alternating-current electrodes; electrode positive near the top of the range for direct-current ones. Try it on scrap.',
  ),
  poles: ['electrode_negative', 'electrode_positive'],
  electrodeType: AC_OR_DC_ELECTRODE,
  cautions: [
    custom('Crack risk: preheat evenly, gouge in short lengths and let the casting cool slowly under cover.'),
    {
      text: 'For oxy-fuel gouging of cast iron 400 to 450 degC of preheat is asked; take it as a guide, not as a rule for the arc.',
      source: 'TWI Job Knowledge 8',
      provenance: 'confirmed',
    },
  ],
  heatCautions: [],
  hardens: false,
  prequalified: false,
  interpassMost: interpassMost(
    450,
    'the preheat that its practice knows, so that the casting stays evenly warm (judgement)',
    'derived',
  ),
  fumeOf: ['Fe', 'Mn'],
  fumePossible: [],
  copperBased: false,
  ventilation: null,
};
