import type { MetalData } from './metal-data.ts';
import {
  constantThermal,
  custom,
  density,
  interpassMost,
  latentHeat,
  meanHeat,
  meltingPoint,
} from './sourced-values.ts';

const HEAT = meanHeat(
  560,
  [520, 610],
  'mean to the melting point, above the 444 J/(kg K) at room temperature',
);

/** Nickel and its alloys, as a nickel-chromium-iron alloy. */
export const NICKEL_ALLOY: MetalData = {
  title: 'Nickel and its alloys',
  depthLawFitted: false,
  melting: {
    density: density(8470, [8100, 8900]),
    specificHeat: HEAT,
    meltingPoint: meltingPoint(1413, [1300, 1455]),
    latentHeat: latentHeat(297e3, [280e3, 310e3]),
  },
  thermal: constantThermal(
    HEAT,
    14.9,
    60,
    'nickel-chromium-iron alloy, typical: 14.9 W/(m K) at room temperature, rising when hot; pure nickel 90.9',
  ),
  polarity: custom(
    'Alternating current, or direct current with the electrode negative, with alternating-current electrodes. Try it on scrap.',
  ),
  poles: ['electrode_negative'],
  electrodeType: custom('Alternating-current carbon electrodes.'),
  cautions: [
    custom(
      'Carbon and sulphur harm nickel alloys: grind the groove to bright metal with clean wheels before welding.',
    ),
    custom('Nickel fume: extract it at the source.'),
  ],
  heatCautions: [],
  hardens: false,
  prequalified: false,
  interpassMost: interpassMost(150, 'usual for nickel alloys, which crack hot', 'memory'),
  fumeOf: ['Cr', 'Ni'],
  fumePossible: [],
  copperBased: false,
  ventilation: 'high',
};
