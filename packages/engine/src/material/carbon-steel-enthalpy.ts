import { ZERO_CELSIUS } from '../quantity/index.ts';

const ROOM = 20;

/** Antiderivatives of the specific heat of EN 1993-1-2:2005 3.4.1.2 [J/kg], temperatures in degC. */
const BRANCHES: readonly { from: number; to: number; integral: (t: number) => number }[] = [
  {
    from: ROOM,
    to: 600,
    integral: (t) => 425 * t + (0.773 * t ** 2) / 2 - (1.69e-3 * t ** 3) / 3 + (2.22e-6 * t ** 4) / 4,
  },
  { from: 600, to: 735, integral: (t) => 666 * t - 13002 * Math.log(738 - t) },
  { from: 735, to: 900, integral: (t) => 545 * t + 17820 * Math.log(t - 731) },
  // the standard ends at 1200 degC; its constant value is carried on to the melting range
  { from: 900, to: Number.POSITIVE_INFINITY, integral: (t) => 650 * t },
];

/**
 * Heat that carbon steel takes up from 20 degC to a temperature, per mass.
 *
 * Integral of the specific heat of EN 1993-1-2 in closed form, with its peak at 735 degC. The standard holds to
 * 1200 degC (1473 K); above that its last value, 650 J/(kg K), is carried on.
 *
 * @param temperature - temperature of the solid steel [K], 293.15 to 1800
 * @returns heat per mass [J/kg]
 * @source EN 1993-1-2:2005 3.4.1.2 (confirmed); derived above 1473 K
 * @example
 * carbonSteelEnthalpy(1473.15) // => 827063.84
 */
export function carbonSteelEnthalpy(temperature: number): number {
  const celsius = temperature - ZERO_CELSIUS;
  let heat = 0;
  for (const { from, to, integral } of BRANCHES) {
    if (celsius > from) heat += integral(Math.min(celsius, to)) - integral(from);
  }
  return heat;
}
