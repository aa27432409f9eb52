import { describe, expect, it } from 'vitest';
import { cutPass, flatFloor, measureFloor, passWidth } from '../groove/index.ts';
import type { Effort } from './effort.ts';
import type { RunOutcomes } from './run-plan.ts';
import { costsWhereRun, grooveLeft, passWidthOf, wholeCosts } from './whole-cost.ts';

describe('the groove left behind', () => {
  it.each([
    [0.016, 0.004],
    [0.016, 0.012],
    [0.0095, 0.02],
  ])('reads the nominal width %s m back from the surface at a depth of %s m', (width, depth) => {
    expect(passWidthOf(passWidth({ width, depth }), depth)).toBeCloseTo(width, 12);
  });

  it.each([
    [1, 0, 0.016, 0.004],
    [1, 0, 0.016, 0.012],
    [2, 0.009, 0.016, 0.006],
    [4, 0.011, 0.0159, 0.005],
  ])(
    'has the area and width of the floor on a grid: %s tracks, %s m apart',
    (tracks, spacing, width, depth) => {
      // all tracks at one depth of the surface, as the outlines of equal passes
      const cut = Array.from({ length: tracks }, (_, track) => (track - (tracks - 1) / 2) * spacing).map(
        (offset) => cutPass(flatFloor(0.05, 2e-5), { offset, width, depth }),
      );
      const floor = {
        ...cut[0]!,
        depth: cut[0]!.depth.map((_, i) => Math.max(...cut.map((one) => one.depth[i]!))),
      };
      const shape = measureFloor(floor);
      const left = grooveLeft(width, depth, { tracks, spacing }, 6);
      expect(left.areaPerLength / shape.area).toBeGreaterThan(0.985);
      expect(left.areaPerLength / shape.area).toBeLessThan(1.015);
      expect(left.topWidth).toBeCloseTo(shape.width, 4);
    },
  );

  it('is nothing where nothing was cut', () => {
    expect(grooveLeft(0.016, 0, { tracks: 1, spacing: 0 }, 6).areaPerLength).toBe(0);
  });
});

describe('what the whole job costs', () => {
  const shops = 16;
  const list = (value: number): Float64Array => new Float64Array(shops).fill(value);
  const effort = { cost: list(100) } as Effort;
  const outcomes = { depth: list(0.009), deepest: list(0.011), width: list(0.016) } as RunOutcomes;

  it('is priced at the mean depth along the seam', () => {
    const costs = wholeCosts(effort, outcomes, { tracks: 1, spacing: 0 }, 2, ({ depth }) => ({
      cost: depth * 1000,
      time: 0,
    }));
    expect([...costs]).toEqual(new Array(shops).fill(109));
  });

  it('leaves out the shops in which nothing is run', () => {
    const notRun = new Uint8Array(shops);
    notRun[8] = 1;
    expect([...costsWhereRun(Float64Array.of(1, 2), notRun)]).toEqual([1]);
    expect(costsWhereRun(list(3), notRun)).toHaveLength(shops - 1);
  });
});
