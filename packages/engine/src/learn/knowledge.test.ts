import { describe, expect, it } from 'vitest';
import { passWidth } from '../groove/index.ts';
import { metalOf } from '../material/index.ts';
import {
  predictDepth,
  predictWear,
  predictWidth,
  publishedBelief,
  type RemovalBelief,
} from '../removal/index.ts';
import { beliefOfFamily, learnFrom } from './knowledge.ts';
import type { Family, ShopObservation } from './observation.ts';
import { FAMILY, gaugedJobs, trueShop } from './shop.test-support.ts';

const METAL = metalOf('carbon_steel');
const SETTING = { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148, pushAngle: Math.PI / 4 };
const SHOP = trueShop(12, 1);
const JOBS = gaugedJobs(SHOP, 8, 3);
const learned = (observations: readonly ShopObservation[]) =>
  learnFrom({ shop: 'yard', id: 'k', observations });
const belief = (observations: readonly ShopObservation[], family: Family = FAMILY): RemovalBelief =>
  beliefOfFamily(learned(observations), metalOf(family.metal), family);
const spread = (of: RemovalBelief, setting = SETTING): number => {
  const { p05, p95 } = predictDepth(of, setting);
  return Math.log(p95 / p05) / 2 / 1.645;
};

describe('what a shop has learned', () => {
  it('is the published belief before anything is learned', () => {
    const fresh = predictDepth(belief([]), SETTING);
    const published = predictDepth(publishedBelief(METAL, 'flat'), SETTING);
    expect(fresh.p50).toBeCloseTo(published.p50, 6);
    expect(fresh.p05 / published.p05).toBeCloseTo(1, 3);
    expect(fresh.p95 / published.p95).toBeCloseTo(1, 3);
    expect(learned([]).name).toEqual({ id: 'k', trials: 0, jobs: 0, date: null });
  });

  it('comes to the shop’s own law, and little more than the levels below is left to doubt', () => {
    const truth = SETTING.diameter * Math.exp(SHOP.law[0]! + SHOP.law[1]! * 0.3547);
    const known = belief(JOBS);
    expect(Math.abs(Math.log(predictDepth(known, SETTING).p50 / truth))).toBeLessThan(0.08);
    expect(spread(known)).toBeLessThan(0.125);
    expect(spread(belief([]))).toBeGreaterThan(0.27);
    expect(spread(belief(JOBS.slice(0, 1)))).toBeLessThan(0.16);
  });

  it('does not depend on the order of the file', () => {
    expect(belief([...JOBS].reverse())).toEqual(belief(JOBS));
  });

  it('borrows from the shop for another electrode or metal, the nearer the more', () => {
    const none = spread(belief([]));
    const own = spread(belief(JOBS));
    const large = spread(belief(JOBS, { ...FAMILY, band: 'large' }));
    expect(large).toBeGreaterThan(1.1 * own);
    expect(large).toBeLessThan(0.75 * none);
    const iron = (observations: readonly ShopObservation[]) =>
      spread(belief(observations, { ...FAMILY, metal: 'cast_iron' }));
    expect(iron(JOBS)).toBeLessThan(0.9 * iron([]));
    expect(iron(JOBS)).toBeGreaterThan(large);
  });

  it('carries a shop’s level over to a family that it has not tried', () => {
    const deep = JOBS.map((job) => ({
      ...job,
      passes: job.passes.map((pass) => ({
        ...pass,
        stations: pass.stations.map((station) => ({ ...station, depth: 1.3 * station.depth })),
      })),
    }));
    const shift = (family: Family): number =>
      Math.log(
        predictDepth(belief(deep, family), SETTING).p50 / predictDepth(belief(JOBS, family), SETTING).p50,
      );
    expect(shift(FAMILY)).toBeCloseTo(Math.log(1.3), 1);
    expect(shift({ ...FAMILY, band: 'small' })).toBeGreaterThan(0.15);
    expect(shift({ ...FAMILY, band: 'small' })).toBeLessThan(shift(FAMILY));
  });

  it('names the days and counts it rests on', () => {
    const trial: ShopObservation = { ...JOBS[0]!, id: 't', kind: 'trial', date: '2026-05-01' };
    expect(learned([...JOBS, trial]).name).toEqual({ id: 'k', trials: 1, jobs: 8, date: '2026-05-01' });
  });
});

describe('an outlier', () => {
  it('is weighed down and kept, and moves the prediction by little', () => {
    const [first, ...others] = JOBS;
    const wrong = {
      ...first!,
      passes: first!.passes.map((pass) => ({
        ...pass,
        stations: pass.stations.map((station) => ({ ...station, depth: 2 * station.depth })),
      })),
    };
    const known = learned([wrong, ...others]);
    const { group } = known.depth.learned.weights;
    expect(group[0]!).toBeLessThan(0.2);
    expect(Math.min(...group.subarray(1))).toBeGreaterThan(0.5);
    const moved =
      predictDepth(beliefOfFamily(known, METAL, FAMILY), SETTING).p50 /
      predictDepth(belief(JOBS), SETTING).p50;
    expect(Math.abs(Math.log(moved))).toBeLessThan(0.04);
  });
});

describe('width and wear', () => {
  const nominal = 0.0172;
  const measured = JOBS.map((job) => ({
    ...job,
    passes: job.passes.map((pass) => ({
      ...pass,
      wear: 3.2e-10,
      stations: pass.stations.map((station) => ({
        ...station,
        width: passWidth({ width: nominal, depth: station.depth }),
      })),
    })),
  }));

  it('are learned from the passes that have them', () => {
    const known = belief(measured);
    expect(predictWidth(known, 0.0127).p50).toBeCloseTo(nominal, 3);
    const { p05, p95 } = predictWidth(known, 0.0127);
    const before = predictWidth(belief([]), 0.0127);
    expect(p95 - p05).toBeLessThan(0.5 * (before.p95 - before.p05));
    const perVolume = 850 / ((Math.PI * 0.0127 ** 2) / 4);
    expect(predictWear(known, 0.0127, 850).p50 / perVolume / 3.2e-10).toBeCloseTo(1, 1);
  });

  it('stay as published without', () => {
    expect(predictWidth(belief(JOBS), 0.0127).p50).toBeCloseTo(predictWidth(belief([]), 0.0127).p50, 9);
  });
});
