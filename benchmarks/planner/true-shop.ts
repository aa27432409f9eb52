import {
  depthRegressors,
  drawStream,
  type Job,
  type KitElectrode,
  type Knowledge,
  learnFrom,
  metalOf,
  PUBLISHED_PRIOR,
  SEAM_RANGE,
  type ShopObservation,
  STARTING_DEPTH,
  sizeBand,
} from '@furrow/engine';
import type { Levels } from './own-shops.ts';

/** A shop as nature has it: its law, and how much it varies. */
export interface TrueShop {
  readonly law: readonly number[];
  readonly levels: Levels;
}

/** A shop whose standard deviations are a multiple of the starting values; the family's own is drawn with it. */
export function trueShop(seed: number, factor: number, family = factor): TrueShop {
  const stream = drawStream(seed);
  const [level, slope, angle] = PUBLISHED_PRIOR.depth.mean as [number, number, number];
  return {
    law: [level + family * STARTING_DEPTH.family.sd * stream.normal(), slope, angle],
    levels: {
      job: factor * STARTING_DEPTH.job.sd,
      pass: factor * STARTING_DEPTH.pass.sd,
      seam: factor * STARTING_DEPTH.seam.sd,
    },
  };
}

/** Where a trial is gauged [m]: apart enough along its 300 mm. */
const STATIONS = [0.05, 0.15, 0.25];
const GAUGE_SD = 0.4e-3;

/** What a shop has learned from so many trials with an electrode, cut about a depth. */
export function learnedFrom(
  shop: TrueShop,
  { plate, seam, kit }: Job,
  electrode: KitElectrode,
  current: number,
  depth: number,
  trials: number,
  seed: number,
): Knowledge {
  const metal = metalOf(plate.material, plate.composition);
  const meltingEnergy = metal.meltingEnergy.value;
  const stream = drawStream(seed);
  const { diameter, kind } = electrode;
  const observations = Array.from({ length: trials }, (_, index): ShopObservation => {
    const aim = depth * (0.85 + 0.3 * stream.uniform());
    const base = { diameter, current, voltage: kit.arc_voltage.set, pushAngle: kit.push_angle };
    const unit = depthRegressors({ ...base, travel: 1 }, meltingEnergy);
    const rise = PUBLISHED_PRIOR.depth.mean[1]!;
    const middle = PUBLISHED_PRIOR.depth.mean.reduce((sum, value, i) => sum + value * unit[i]!, 0);
    const travel = Math.exp((middle - Math.log(aim / diameter)) / rise);
    const x = depthRegressors({ ...base, travel }, meltingEnergy);
    const mean =
      shop.law.reduce((sum, value, i) => sum + value * x[i]!, 0) +
      shop.levels.job * stream.normal() +
      shop.levels.pass * stream.normal();
    const along = matern(STATIONS, () => stream.normal());
    return {
      id: `trial-${String(index + 1).padStart(3, '0')}`,
      kind: 'trial',
      date: `2026-${String(1 + Math.floor(index / 28)).padStart(2, '0')}-${String(1 + (index % 28)).padStart(2, '0')}`,
      family: { metal: metal.family, position: seam.position, electrode: kind, band: sizeBand(diameter) },
      meltingEnergy,
      gaugeSd: GAUGE_SD,
      passes: [
        {
          setting: { ...base, travel },
          stations: STATIONS.map((at, i) => ({
            at,
            depth: Math.max(
              0.1e-3,
              diameter * Math.exp(mean + shop.levels.seam * along[i]!) + GAUGE_SD * stream.normal(),
            ),
          })),
        },
      ],
    };
  });
  return learnFrom({ shop: 'yard', id: `yard-${trials}`, observations });
}

/** The standardised process along the seam at some places: Matern 3/2, through its factor. */
function matern(places: readonly number[], normal: () => number): number[] {
  const lower = places.map(() => places.map(() => 0));
  places.forEach((a, r) => {
    for (let c = 0; c <= r; c += 1) {
      const far = (Math.sqrt(3) * Math.abs(a - places[c]!)) / SEAM_RANGE;
      let value = (1 + far) * Math.exp(-far);
      for (let k = 0; k < c; k += 1) value -= lower[r]![k]! * lower[c]![k]!;
      lower[r]![c] = r === c ? Math.sqrt(value) : value / lower[c]![c]!;
    }
  });
  const z = places.map(() => normal());
  return lower.map((row) => row.reduce((sum, value, k) => sum + value * z[k]!, 0));
}
