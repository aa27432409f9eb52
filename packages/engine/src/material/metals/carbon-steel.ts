import { FERRITIC_MELTING, FERRITIC_THERMAL } from './ferritic.ts';
import type { MetalData } from './metal-data.ts';
import { DC_ELECTRODE, GRIND_SKIN, interpassMost, meltingPoint } from './sourced-values.ts';

/** Carbon steel, the metal of the published rows. */
export const CARBON_STEEL: MetalData = {
  title: 'Carbon steel',
  depthLawFitted: true,
  melting: { ...FERRITIC_MELTING, meltingPoint: meltingPoint(1500, [1480, 1530]) },
  thermal: FERRITIC_THERMAL,
  polarity: {
    text: 'Direct current, electrode positive.',
    source: 'TWI Job Knowledge 12, operating data',
    provenance: 'memory',
  },
  poles: ['electrode_positive'],
  electrodeType: DC_ELECTRODE,
  cautions: [GRIND_SKIN],
  heatCautions: [],
  hardens: true,
  prequalified: true,
  interpassMost: interpassMost(250, 'usual for structural steel (common practice, no source)'),
  fumeOf: ['Fe', 'Mn'],
  fumePossible: [],
  copperBased: false,
  ventilation: 'low',
};
