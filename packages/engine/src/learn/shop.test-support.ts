import { metalOf } from '../material/index.ts';
import { drawStream } from '../numeric/index.ts';
import { depthRegressors, PUBLISHED_PRIOR, STARTING_DEPTH, seamCorrelation } from '../removal/index.ts';
import type { Family, ShopObservation } from './observation.ts';

/** A shop as nature has it, for tests: its true law and spreads. */
export interface TrueShop {
  readonly law: readonly number[];
  readonly job: number;
  readonly pass: number;
  readonly seam: number;
}

export const FAMILY: Family = {
  metal: 'carbon_steel',
  position: 'flat',
  electrode: 'jointed',
  band: 'middle',
};
const RANGE = 0.25;
const STATIONS = [0.1, 0.3, 0.55, 0.8, 1.3, 1.9];
export const GAUGE_SD = 0.3e-3;

/** A shop whose spreads are a multiple of the starting values. */
export function trueShop(seed: number, factor: number): TrueShop {
  const stream = drawStream(seed);
  const [a, b, c] = PUBLISHED_PRIOR.depth.mean as [number, number, number];
  return {
    law: [a + factor * STARTING_DEPTH.family.sd * stream.normal(), b + 0.1 * stream.normal(), c],
    job: factor * STARTING_DEPTH.job.sd,
    pass: factor * STARTING_DEPTH.pass.sd,
    seam: factor * STARTING_DEPTH.seam.sd,
  };
}

/** Gauged jobs of a shop: two passes each, at settings that differ from job to job. */
export function gaugedJobs(shop: TrueShop, count: number, seed: number, passes = 2): ShopObservation[] {
  const stream = drawStream(seed);
  const { value: meltingEnergy } = metalOf('carbon_steel').meltingEnergy;
  const factor = seamFactor();
  return Array.from({ length: count }, (_, index): ShopObservation => {
    const job = shop.job * stream.normal();
    return {
      id: `job-${String(index + 1).padStart(3, '0')}`,
      kind: 'job',
      date: `2026-${String(1 + Math.floor(index / 28)).padStart(2, '0')}-${String(1 + (index % 28)).padStart(2, '0')}`,
      family: FAMILY,
      meltingEnergy,
      gaugeSd: GAUGE_SD,
      passes: Array.from({ length: passes }, () => {
        const setting = {
          diameter: 0.0127,
          current: 800 + 150 * stream.uniform(),
          voltage: 42,
          travel: 0.011 + 0.008 * stream.uniform(),
          pushAngle: Math.PI / 4,
        };
        const x = depthRegressors(setting, meltingEnergy);
        const middle = shop.law.reduce(
          (sum, value, i) => sum + value * x[i]!,
          job + shop.pass * stream.normal(),
        );
        const normals = STATIONS.map(() => stream.normal());
        return {
          setting,
          stations: STATIONS.map((at, i) => {
            const seam = shop.seam * factor[i]!.reduce((sum, value, k) => sum + value * normals[k]!, 0);
            return { at, depth: setting.diameter * Math.exp(middle + seam) + GAUGE_SD * stream.normal() };
          }),
        };
      }),
    };
  });
}

/** Lower factor of the correlation between the stations, by Cholesky. */
function seamFactor(): number[][] {
  const lower = STATIONS.map(() => STATIONS.map(() => 0));
  STATIONS.forEach((a, r) => {
    for (let c = 0; c <= r; c += 1) {
      let value = seamCorrelation(a - STATIONS[c]!, RANGE);
      for (let k = 0; k < c; k += 1) value -= lower[r]![k]! * lower[c]![k]!;
      lower[r]![c] = r === c ? Math.sqrt(value) : value / lower[c]![c]!;
    }
  });
  return lower;
}
