import { describe, expect, it } from 'vitest';
import { thermalOf } from '../material/index.ts';
import { roundFloor, runOut } from './constant-metal.test-support.ts';
import type { SeamEndInput } from './seam-end-heat.ts';
import { solveSeamEnd } from './solve-seam-end.ts';

const BASE: SeamEndInput = {
  metal: thermalOf('carbon_steel'),
  thickness: 0.02,
  halfWidth: 0.08,
  ambient: 293.15,
  start: 293.15,
  losses: 'film_and_radiation',
  length: 0.1,
  before: { seamGoesOn: true, plate: 0 },
  after: { seamGoesOn: false, plate: 0.06 },
  passes: [{ at: 0, travel: 0.012, duration: 1, floor: roundFloor(0.006, 0.006), keptPerLength: 4e5 }],
  past: 273.15 + 725,
  until: 30,
  quality: 'quick',
};
const solve = (change: Partial<SeamEndInput> = {}) => runOut(solveSeamEnd({ ...BASE, ...change }));

describe('the end of a seam', () => {
  const { value, yielded } = solve();
  const middle = value.places[value.places.length >> 1]!;
  const last = value.places.at(-1)!;

  it('accounts for every joule and tells how far it is', () => {
    expect(value.balance.error).toBeLessThan(1e-9);
    expect(value.balance.given / (4e5 * 0.1)).toBeCloseTo(1, 9);
    expect(yielded.every((share, at) => share >= (yielded[at - 1] ?? 0))).toBe(true);
    expect(yielded.at(-1)).toBe(1);
  });

  it('is like the section well inside the seam', () => {
    const rise = (hot: number): number => hot - BASE.start;
    expect(Math.abs(rise(middle.backFacePeak) / rise(value.section.backFacePeak) - 1)).toBeLessThan(0.03);
    expect(Math.abs(middle.widthPast / value.section.widthPast - 1)).toBeLessThan(0.1);
    expect(Math.abs(middle.t85 / value.section.t85 - 1)).toBeLessThan(0.1);
  });

  it('stays colder at the back where cold plate lies beyond, and hotter at the plate’s edge', () => {
    expect(last.backFacePeak).toBeLessThan(middle.backFacePeak - 10);
    const edge = solve({ after: { seamGoesOn: false, plate: 0 } }).value.places.at(-1)!;
    expect(edge.backFacePeak).toBeGreaterThan(last.backFacePeak + 10);
    expect(edge.t85).toBeGreaterThan(last.t85);
  });
});

it('of an endless seam run past very quickly is the section itself, all along', () => {
  const { value } = solve({
    after: { seamGoesOn: true, plate: 0 },
    passes: [{ ...BASE.passes[0]!, travel: 10 }],
    length: 0.1,
  });
  for (const { backFacePeak, widthPast } of value.places) {
    expect(Math.abs(backFacePeak - value.section.backFacePeak)).toBeLessThan(0.3);
    expect(Math.abs(widthPast / value.section.widthPast - 1)).toBeLessThan(0.02);
  }
});

it('of a short seam runs several passes over the same place', () => {
  const passes = [0.003, 0.006].map((depth, layer) => ({
    at: 15 * layer,
    travel: 0.012,
    duration: 1,
    floor: roundFloor(0.006, depth),
    keptPerLength: 3e5,
  }));
  const plate = { seamGoesOn: false, plate: 0.04 };
  const { value } = solve({ passes, length: 0.03, before: plate, after: plate, until: 40 });
  expect(value.balance.error).toBeLessThan(1e-9);
  expect(value.balance.cutOut).toBeGreaterThan(0);
  const middle = value.places[value.places.length >> 1]!;
  // heat leaves to all sides: a short seam is milder than the section says
  expect(middle.backFacePeak).toBeLessThan(value.section.backFacePeak);
});
