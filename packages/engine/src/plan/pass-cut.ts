import { passArea } from '../groove/index.ts';
import { depthCeiling, REMOVAL_SHARE_MOST } from '../removal/index.ts';
import type { RunDemand, Setup } from './run-record.ts';
import type { ShopDraws } from './shop-draws.ts';
import type { Rig } from './way.ts';

/** Area that a circular bottom leaves standing in the corners of its square, per width squared, and that of the flare per depth squared [-]: a little less, and a little more. */
const CORNERS = 0.105;
const FLARE = 0.06;

/** What one pass cuts in a shop, held under the depth that the energy balance allows; the energy goes beside its logarithm. */
export function cutter(
  { rig }: Pick<Setup, 'rig'>,
  demand: RunDemand,
  draws: ShopDraws,
): (shop: number, lift: number, logEnergy: number, energy: number, noise: number) => number {
  const { diameter } = rig.electrode;
  const areaAtUnit = REMOVAL_SHARE_MOST * diameter ** 2;
  const { slope, passSd, extraWidth } = draws;
  return (shop, lift, logEnergy, energy, noise) => {
    const cut = diameter * Math.exp(lift + slope[shop]! * logEnergy + passSd[shop]! * noise);
    const width = diameter + extraWidth[shop]!;
    const area = areaAtUnit * energy;
    // A rectangle without its corners, and the flare with it, is more than any pass: most cuts need no closer look.
    const corners = cut > width / 2 ? CORNERS * width * width : 0;
    if (cut * (width + FLARE * cut) - corners <= area || passArea({ width, depth: cut }) <= area) return cut;
    return ceilingAt(rig, logEnergy, width, demand.meltingEnergy);
  };
}

/** Depth [m] that the energy balance allows a pass of this width [m] at this ln specific energy. */
export function ceilingAt(rig: Rig, logEnergy: number, width: number, meltingEnergy: number): number {
  const { current, voltage, unitTravel, electrode } = rig;
  const travel = unitTravel * Math.exp(-logEnergy);
  return depthCeiling(
    { diameter: electrode.diameter, current, voltage, travel, pushAngle: 0 },
    width,
    meltingEnergy,
  );
}
