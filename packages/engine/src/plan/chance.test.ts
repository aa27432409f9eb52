import { expect, it } from 'vitest';
import { chancesOf, type DepthDemand, shortfall } from './chance.ts';
import type { RunOutcomes } from './run-plan.ts';

const DEMAND: DepthDemand = {
  least: 8,
  most: 12,
  mostForLigament: 14,
  width: { least: 10, most: 20 },
  assurance: 0.5,
  ligamentAssurance: 0.75,
};
const shop = (shallowest: number, deepest: number, width: number, notRun = 0) => ({
  shallowest,
  deepest,
  width,
  notRun,
});
const outcomes = (shops: ReturnType<typeof shop>[]): RunOutcomes => {
  const list = (key: 'shallowest' | 'deepest' | 'width') => Float64Array.from(shops, (each) => each[key]);
  const none = new Float64Array(shops.length);
  return {
    shallowest: list('shallowest'),
    deepest: list('deepest'),
    depth: list('deepest'),
    width: list('width'),
    widthLeast: list('width'),
    widthMost: list('width'),
    travelTime: none,
    passes: none,
    gauged: none,
    notRun: Uint8Array.from(shops, (each) => each.notRun),
  };
};

it('counts every demand by itself, and all of them together', () => {
  const chances = chancesOf(
    outcomes([shop(8, 12, 10), shop(7.9, 11, 15), shop(9, 12.1, 15), shop(9, 14.1, 21), shop(0, 0, 0, 1)]),
    DEMAND,
  );
  expect(chances.reached).toBeCloseTo(3 / 5, 12);
  expect(chances.notTooDeep).toBeCloseTo(3 / 5, 12);
  expect(chances.ligamentKept).toBeCloseTo(4 / 5, 12);
  expect(chances.widthInBand).toBeCloseTo(4 / 5, 12);
  expect(chances.joint).toBeCloseTo(1 / 5, 12);
  expect(chances.standardError).toBeCloseTo(Math.sqrt((0.6 * 0.4) / 5), 12);
  expect(shortfall(chances, DEMAND)).toBeCloseTo(-0.05, 12);
  expect(shortfall(chances, { ...DEMAND, assurance: 0.7 })).toBeCloseTo(0.1, 12);
});
