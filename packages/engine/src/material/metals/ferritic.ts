import { ZERO_CELSIUS } from '../../quantity/index.ts';
import { carbonSteelEnthalpy } from '../carbon-steel-enthalpy.ts';
import type { MeltingData } from '../melting-energy.ts';
import type { ThermalData } from './metal-data.ts';
import { density, FROZEN, latentHeat, MELT_HEAT, meanOf } from './sourced-values.ts';

const ROOM = 293.15;

/** What carbon and low-alloy steel have in common when they melt. */
export const FERRITIC_MELTING: Omit<MeltingData, 'meltingPoint'> = {
  density: density(7850, [7800, 7870], 'EN 1993-1-2:2005', 'confirmed'),
  specificHeat: meanOf(
    carbonSteelEnthalpy,
    1500,
    0.03,
    'EN 1993-1-2:2005 3.4.1.2 integrated to 1200 degC, its last value carried on to 1500 degC',
  ),
  latentHeat: latentHeat(
    270e3,
    [247e3, 277e3],
    'handbook values from 247 kJ/kg (pure iron) to 277 kJ/kg (a published weld model)',
  ),
};

/** Conduction and heat content of carbon and low-alloy steel. */
export const FERRITIC_THERMAL: ThermalData = {
  // below 20 degC the specific heat at 20 degC is carried on
  solid: (temperature) =>
    temperature < ROOM ? 439.80176 * (temperature - ROOM) : carbonSteelEnthalpy(temperature),
  // EN 1993-1-2:2005 3.4.1.3; constant below 20 and above 1200 degC
  conductivity: (temperature) => {
    const celsius = Math.max(20, temperature - ZERO_CELSIUS);
    return celsius < 800 ? 54 - 0.0333 * celsius : 27.3;
  },
  meltingRange: 50,
  liquidHeat: 820,
  source: [
    {
      text: 'EN 1993-1-2:2005 3.4.1.2 and 3.4.1.3, conductivity and specific heat from 20 to 1200 degC',
      provenance: 'confirmed',
    },
    {
      text: 'above 1200 degC 650 J/(kg K) and 27.3 W/(m K) carried on; 270 kJ/kg taken up from 1450 to 1500 degC',
      provenance: 'derived',
    },
    MELT_HEAT,
    FROZEN,
  ],
};
