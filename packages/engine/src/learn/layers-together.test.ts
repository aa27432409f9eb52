import { describe, expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import { drawStream, mixtureProbability } from '../numeric/index.ts';
import { depthRegressors, lnDepthParts } from '../removal/index.ts';
import { beliefOfFamily, learnFrom } from './knowledge.ts';
import { layersTogether } from './layers-together.ts';
import type { ShopObservation } from './observation.ts';
import { scoreEntries } from './scores.ts';
import { FAMILY, GAUGE_SD, trueShop } from './shop.test-support.ts';

const METAL = metalOf('carbon_steel');
const MELTING = METAL.meltingEnergy.value;
const SETTING = { diameter: 0.0127, current: 850, voltage: 42, travel: 0.013, pushAngle: Math.PI / 4 };

/** Jobs of a shop in two or three layers, gauged after the last of them alone. */
function jobsInLayers(seed: number, count: number): ShopObservation[] {
  const shop = trueShop(seed, 1);
  const stream = drawStream(seed + 7);
  return Array.from({ length: count }, (_, index): ShopObservation => {
    const job = shop.job * stream.normal();
    const settings = Array.from({ length: 2 + (index % 2) }, () => ({
      ...SETTING,
      travel: 0.011 + 0.012 * stream.uniform(),
    }));
    const levels = settings.map(() => shop.pass * stream.normal());
    // places so far apart that the course of each layer is drawn anew
    const stations = [0.2, 2.2, 4.2].map((at) => ({
      at,
      depth:
        settings.reduce((sum, setting, k) => {
          const law = depthRegressors(setting, MELTING).reduce((all, x, i) => all + x * shop.law[i]!, 0);
          return sum + setting.diameter * Math.exp(law + job + levels[k]! + shop.seam * stream.normal());
        }, 0) +
        GAUGE_SD * stream.normal(),
    }));
    const [setting, ...below] = settings;
    return {
      ...{ id: `j-${index}`, kind: 'job', date: `2026-01-${10 + index}`, family: FAMILY },
      ...{ meltingEnergy: MELTING, gaugeSd: GAUGE_SD },
      passes: [{ setting: setting!, below, stations }],
    };
  });
}

describe('layers that were gauged together', () => {
  it('are one pass of the law in ln depth: exact where they are alike', () => {
    const { regressors, toOne, share, parts } = layersTogether([SETTING, SETTING, SETTING], MELTING);
    depthRegressors(SETTING, MELTING).forEach((x, i) => {
      expect(regressors[i]).toBeCloseTo(x, 12);
    });
    expect(Math.exp(toOne)).toBeCloseTo(1 / 3, 12);
    expect(share).toBeCloseTo(1 / 3, 12);
    expect(parts[1]).toBeCloseTo(1 / 3, 12);
    expect(layersTogether([SETTING], MELTING)).toMatchObject({ share: 1, parts: [1] });
    expect(layersTogether([SETTING], MELTING).toOne).toBeCloseTo(0, 12);
  });

  it('give the sum back where they are not', () => {
    const slow = { ...SETTING, travel: 0.008 };
    const { regressors, toOne } = layersTogether([SETTING, slow], MELTING);
    const law = trueShop(3, 0).law;
    const ln = (x: readonly number[]): number => x.reduce((sum, value, i) => sum + value * law[i]!, 0);
    const sum = [SETTING, slow].reduce((all, each) => all + Math.exp(ln(depthRegressors(each, MELTING))), 0);
    // about the published law, from which this shop's slope is some hundredths off
    expect(Math.abs(ln(regressors) - toOne - Math.log(sum))).toBeLessThan(2e-3);
  });

  it('teach the level of a shop: less is left open, and what is then promised of one pass is kept', () => {
    const SHOPS = 40;
    let [inside, count] = [0, 0];
    for (let index = 0; index < SHOPS; index += 1) {
      const seed = 300 + index;
      const known = learnFrom({ shop: 'yard', id: 'x', observations: jobsInLayers(seed, 6) });
      const belief = beliefOfFamily(known, METAL, FAMILY);
      const shop = trueShop(seed, 1);
      const stream = drawStream(seed + 99);
      const law = depthRegressors(SETTING, MELTING).reduce((all, x, i) => all + x * shop.law[i]!, 0);
      const parts = lnDepthParts(belief, SETTING);
      for (let k = 0; k < 25; k += 1) {
        const own = [shop.job, shop.pass, shop.seam].reduce((sum, sd) => sum + sd * stream.normal(), 0);
        const place = mixtureProbability(parts, law + own);
        count += 1;
        if (place > 0.05 && place < 0.95) inside += 1;
      }
      const before = lnDepthParts(
        beliefOfFamily(learnFrom({ shop: 'yard', id: 'x', observations: [] }), METAL, FAMILY),
        SETTING,
      );
      expect(parts[0]!.variance).toBeLessThan(0.35 * before[0]!.variance);
    }
    // as of single passes after as many jobs: 0.95, for the spreads are still partly those of the start
    expect(inside / count).toBeGreaterThan(0.9);
    expect(inside / count).toBeLessThan(0.98);
  });

  it('are scored against what was predicted of all of them', () => {
    const places = Array.from({ length: 12 }, (_, k) => scoreEntries('yard', jobsInLayers(600 + k, 6)))
      .flat()
      .map(({ place }) => place);
    const share = places.filter((place) => place > 0.05 && place < 0.95).length / places.length;
    expect(share).toBeGreaterThan(0.84);
    const middle = places.reduce((sum, place) => sum + place, 0) / places.length;
    expect(Math.abs(middle - 0.5)).toBeLessThan(0.1);
  });
});
