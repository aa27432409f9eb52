import { FERRITIC_MELTING, FERRITIC_THERMAL } from './ferritic.ts';
import type { MetalData } from './metal-data.ts';
import { custom, DC_ELECTRODE, GRIND_SKIN, interpassMost, meltingPoint, POSITIVE } from './sourced-values.ts';

/** Low-alloy steel. */
export const LOW_ALLOY_STEEL: MetalData = {
  title: 'Low-alloy steel',
  depthLawFitted: true,
  melting: { ...FERRITIC_MELTING, meltingPoint: meltingPoint(1500, [1470, 1530]) },
  thermal: FERRITIC_THERMAL,
  polarity: POSITIVE,
  poles: ['electrode_positive'],
  electrodeType: DC_ELECTRODE,
  cautions: [
    GRIND_SKIN,
    custom('Preheat as for welding the same steel: the heated rim hardens and can crack when it cools fast.'),
  ],
  heatCautions: [],
  hardens: true,
  prequalified: false,
  interpassMost: interpassMost(
    250,
    'usual for low-alloy steel (common practice, no source); its procedure may ask for less',
  ),
  fumeOf: ['Fe', 'Mn'],
  fumePossible: ['Cr', 'Ni'],
  copperBased: false,
  ventilation: 'low',
};
