import { halfWidthAt } from '../groove/index.ts';
import { bracketedRoot, type NestedGroup, type NestedReading } from '../numeric/index.ts';
import { columnsOf, type Effects, partsOf } from './effects.ts';
import { layersTogether } from './layers-together.ts';
import type { GaugedPass, ShopObservation } from './observation.ts';

/** Standard deviation of one width reading by hand, in those of a depth reading [-] (judgement, no source). */
export const WIDTH_NOISE = 1.5;
/** Standard deviation of a measured ln wear [-]: length burnt and arc time as a crew reads them (judgement). */
const WEAR_NOISE = 0.05;
/** Depth taken for a reading of none [m]: the logarithm needs one. */
const DEPTH_LEAST = 0.1e-3;

/** Readings of ln(h / D); the noise of the gauge is that of the depth over the depth. */
export function depthGroups(
  observations: readonly ShopObservation[],
  effects: Effects,
  shop: string,
): NestedGroup[] {
  return observations.map(({ passes, family, meltingEnergy, gaugeSd }): NestedGroup => {
    const { columns } = columnsOf(effects, partsOf(family, shop));
    return passes
      .filter(({ stations }) => stations.length > 0)
      .map(({ setting, below = [], stations }) => {
        const { regressors, toOne, share } = layersTogether([...below, setting], meltingEnergy);
        // The noise is taken at the pass's own mean, so that a shallow reading is not trusted less for being shallow.
        const mean = stations.reduce((sum, { depth }) => sum + depth, 0) / stations.length;
        return {
          columns: [0, 1, 2, ...columns],
          regressors: [...regressors, ...columns.map(() => 1)],
          ...(below.length > 0 && { share }),
          readings: stations.map(
            ({ at, depth, depthSd }): NestedReading => ({
              place: at,
              value: Math.log(Math.max(DEPTH_LEAST, depth) / setting.diameter) + toOne,
              variance: ((depthSd ?? gaugeSd) / Math.max(DEPTH_LEAST, mean)) ** 2,
            }),
          ),
        };
      });
  });
}

/** Readings of the nominal width less the electrode's diameter. */
export function widthGroups(
  observations: readonly ShopObservation[],
  effects: Effects,
  shop: string,
): NestedGroup[] {
  return observations.map(({ passes, family, gaugeSd }): NestedGroup => {
    const { columns } = columnsOf(effects, partsOf(family, shop));
    return passes.flatMap(({ setting, below, stations }) => {
      // the width at the surface is that of no layer alone
      if (below !== undefined) return [];
      const readings = stations.flatMap(({ at, depth, width, widthSd }): NestedReading[] => {
        const nominal = width === undefined ? undefined : nominalWidth(width, depth);
        return nominal === undefined
          ? []
          : [
              {
                place: at,
                value: nominal - setting.diameter,
                variance: (widthSd ?? WIDTH_NOISE * gaugeSd) ** 2,
              },
            ];
      });
      return readings.length === 0
        ? []
        : [{ columns: [0, ...columns], regressors: [1, ...columns.map(() => 1)], readings }];
    });
  });
}

/** Readings of ln electrode volume per ampere-second, one to a pass. */
export function wearGroups(
  observations: readonly ShopObservation[],
  effects: Effects,
  shop: string,
): NestedGroup[] {
  return observations.map(({ passes, family }): NestedGroup => {
    const { columns } = columnsOf(effects, partsOf(family, shop));
    return passes.flatMap(({ wear }: GaugedPass) =>
      wear === undefined
        ? []
        : [
            {
              columns: [0, ...columns],
              regressors: [1, ...columns.map(() => 1)],
              readings: [{ place: 0, value: Math.log(wear), variance: WEAR_NOISE ** 2 }],
            },
          ],
    );
  });
}

/** Nominal width of a pass from its width at the surface and its depth; undefined where no pass is so shaped. */
function nominalWidth(width: number, depth: number): number | undefined {
  return bracketedRoot(
    (nominal) => 2 * halfWidthAt(nominal / 2, depth) - width,
    Math.max(1e-4, depth / 2),
    4 * width,
    1e-7,
  );
}
