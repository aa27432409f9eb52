import { describe, expect, it } from 'vitest';
import { evenAxis } from './axis.ts';
import { constantMetal, runOut } from './constant-metal.test-support.ts';
import { folded, isMirrored, mirroredAxis, mirroredRows, rightHalf } from './mirror.ts';
import type { SectionHeat, SectionHeatInput } from './section-heat.ts';
import { solveSection } from './solve-section.ts';

const FLOOR = [
  { offset: -0.006, depth: 0 },
  { offset: -0.003, depth: 0.004 },
  { offset: 0, depth: 0.005 },
  { offset: 0.003, depth: 0.004 },
  { offset: 0.006, depth: 0 },
];
/** The same floor, one side a little deeper: too little to be felt, enough to be followed whole. */
const SKEWED = FLOOR.map((point) =>
  point.offset < 0 && point.depth > 0 ? { ...point, depth: 0.004003 } : point,
);

function solved(floor: typeof FLOOR): SectionHeat {
  const input: SectionHeatInput = {
    metal: constantMetal(),
    thickness: 0.02,
    ambient: 293.15,
    start: 293.15,
    losses: 'film_and_radiation',
    passes: [{ at: 0, duration: 1, floor, keptPerLength: 4e5 }],
    until: 60,
    frameTimes: [0, 5, 60],
    quality: 'quick',
  };
  return runOut(solveSection(input)).value;
}

describe('half of a section', () => {
  it('is told as the whole of it, as the whole solves it', () => {
    expect(isMirrored(FLOOR)).toBe(true);
    expect(isMirrored(SKEWED)).toBe(false);
    const [half, whole] = [solved(FLOOR), solved(SKEWED)];
    expect(half.cells * 2).toBe(whole.cells);
    expect(half.across).toHaveLength(whole.across.length);
    expect(half.peak).toHaveLength(whole.peak.length);
    expect(half.backFacePeak).toBeCloseTo(whole.backFacePeak, 0);
    expect(half.beforePass[0]).toBeCloseTo(whole.beforePass[0]!, 3);
    for (const key of ['given', 'lost', 'stored'] as const)
      expect(Math.abs(half.balance[key] / whole.balance[key] - 1), key).toBeLessThan(0.005);
    expect(half.balance.error).toBeLessThan(1e-9);
    const last = half.frames.at(-1)!;
    const columns = half.across.length;
    expect(last.temperature[0]).toBe(last.temperature[columns - 1]);
    expect(half.surface.map(({ offset }) => offset)).toEqual(
      half.surface.map(({ offset }) => -offset).toReversed(),
    );
  });
});

describe('mirroring', () => {
  it('lays the half out to both sides', () => {
    const axis = mirroredAxis(evenAxis(0, 1, 2));
    expect(Array.from(axis.edges)).toEqual([-1, -0.5, 0, 0.5, 1]);
    expect([0, 1, 2, 3].map((column) => folded(column, 2))).toEqual([1, 0, 0, 1]);
    expect(Array.from(mirroredRows(Float32Array.of(1, 2, 3, 4), 2))).toEqual([2, 1, 1, 2, 4, 3, 3, 4]);
  });

  it('takes the floor from the centre line on', () => {
    expect(rightHalf(FLOOR)).toEqual(FLOOR.slice(2));
    expect(rightHalf([])).toEqual([]);
  });
});
