import { describe, expect, it } from 'vitest';
import { drawStream } from '../../numeric/index.ts';
import { seamCorrelation } from '../../removal/index.ts';
import { conditionGaussian } from './condition-gaussian.ts';
import { type SeamReading, seamStates } from './seam-states.ts';
import { spreadAfter } from './spread-belief.ts';

const RANGE = 0.25;
const nodes = [0.02, 0.045, 0.09].map((course) => ({
  weight: 1 / 3,
  spread: { common: 0.1, course, range: RANGE },
}));

/** Readings of a seam whose course is drawn with a known spread. */
function readingsOf(course: number, count: number, seed: number, sd = 0.01): SeamReading[] {
  const stream = drawStream(seed);
  const at = Array.from({ length: count }, (_, i) => 0.15 * i);
  const path = seamStates({ common: 0.1, course, range: RANGE }, [], at).draw(stream);
  return at.map((place, i) => ({ at: place, value: path[i]! + sd * stream.normal(), sd }));
}

describe('the density of readings', () => {
  it('is that of the Gaussian process, however it is worked out', () => {
    const readings = readingsOf(0.05, 25, 3);
    const spread = { common: 0.1, course: 0.045, range: RANGE };
    const covariance = (a: number, b: number): number =>
      0.1 ** 2 + 0.045 ** 2 * seamCorrelation(a - b, RANGE);
    const { lnDensity } = conditionGaussian(
      { read: readings.map((a) => readings.map((b) => covariance(a.at, b.at))), across: [], asked: [] },
      readings.map(({ value }) => value),
      readings.map(({ sd }) => sd),
      'known',
    );
    expect(seamStates(spread, readings, []).lnDensity).toBeCloseTo(lnDensity, 8);
  });
});

describe('spreads after readings', () => {
  it('are those before without any', () => {
    const mean = Math.sqrt(nodes.reduce((sum, { spread }) => sum + spread.course ** 2 / 3, 0));
    expect(spreadAfter(nodes, [], [])).toEqual({
      common: expect.closeTo(0.1, 12),
      course: expect.closeTo(mean, 12),
      range: RANGE,
    });
  });

  it.each([0.02, 0.045, 0.09])('come near a true course of %d with readings enough', (course) => {
    const found = [1, 2, 3, 4].map((seed) => spreadAfter(nodes, readingsOf(course, 80, seed), []).course);
    const middle = found.reduce((sum, each) => sum + each, 0) / found.length;
    expect(middle / course).toBeGreaterThan(0.8);
    expect(middle / course).toBeLessThan(1.25);
  });

  it('do not take the step at a stretch that was cut again for the course', () => {
    const calm = readingsOf(0.02, 60, 7).map((each) =>
      each.at > 3 && each.at < 6 ? { ...each, value: each.value + 0.3 } : each,
    );
    const whole = spreadAfter(nodes, calm, []).course;
    const apart = spreadAfter(nodes, calm, [{ from: 3.01, to: 5.99 }]).course;
    expect(apart).toBeLessThan(0.03);
    expect(whole).toBeGreaterThan(1.5 * apart);
  });

  it('look at a dense scan no longer than at two hundred places of it', () => {
    const dense = readingsOf(0.045, 1000, 5).map((each, i) => ({ ...each, at: 0.006 * i }));
    expect(spreadAfter(nodes, dense, [])).toEqual(
      spreadAfter(
        nodes,
        dense.filter((_, i) => i % 5 === 0),
        [],
      ),
    );
  });
});
