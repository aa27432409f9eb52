import { describe, expect, it } from 'vitest';
import { mixtureQuantile } from './normal-mixture.ts';
import { studentQuantile } from './student-t.ts';
import { spreadMode, spreadNodes } from './variance-nodes.ts';

/** ln of the density, in the logarithm, of the standard deviation of a scaled inverse chi-squared variance. */
const scaled =
  (degrees: number, guess: number) =>
  (sd: number): number =>
    -degrees * (Math.log(sd / guess) + 0.5 * (guess / sd) ** 2);

describe('spreadMode', () => {
  it('finds the top and its curvature', () => {
    const mode = spreadMode(([a, b]) => scaled(6, 0.3)(a!) + scaled(10, 2)(b!), [0.1, 9]);
    expect(mode.sds[0]).toBeCloseTo(0.3, 3);
    expect(mode.sds[1]).toBeCloseTo(2, 2);
    expect(mode.covariance[0]![0]).toBeCloseTo(1 / 12, 3);
    expect(mode.covariance[1]![1]).toBeCloseTo(1 / 20, 3);
    expect(mode.covariance[0]![1]).toBeCloseTo(0, 4);
  });

  it('sees how two of them hang together: only their sum of squares is seen', () => {
    const density = ([a, b]: readonly number[]): number =>
      scaled(4, 1)(a!) + scaled(4, 1)(b!) - 20 * (Math.log(a! ** 2 + b! ** 2) + 2 / (a! ** 2 + b! ** 2));
    const { covariance } = spreadMode(density, [1.5, 0.5]);
    expect(covariance[0]![1]).toBeLessThan(-0.01);
  });
});

describe('spreadNodes', () => {
  const student = (degrees: number, share: number, directions: number): number => {
    const density = (sds: readonly number[]): number =>
      sds.reduce((sum, sd) => sum + scaled(degrees, 1)(sd), 0);
    const nodes = spreadNodes(density, spreadMode(density, new Array<number>(directions).fill(1)));
    return mixtureQuantile(
      nodes.map(({ weight, sds }) => ({ weight, mean: 0, variance: sds[0]! ** 2 })),
      share,
    );
  };

  it.each([
    [4, 3],
    [5, 4],
    [8, 4],
    [30, 2],
  ])(
    'carry a variance of %d degrees (with %d such variances) to the 95 percent quantile of Student’s t',
    (degrees, directions) => {
      expect(student(degrees, 0.95, directions) / studentQuantile(0.95, degrees)).toBeGreaterThan(0.96);
      expect(student(degrees, 0.95, directions) / studentQuantile(0.95, degrees)).toBeLessThan(1.04);
    },
  );

  it('have weights that add up to one, 2 d + 1 of them', () => {
    const density = ([sd]: readonly number[]): number => scaled(5, 0.2)(sd!);
    const nodes = spreadNodes(density, spreadMode(density, [0.2]));
    expect(nodes).toHaveLength(3);
    expect(nodes.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    // Lopsided: the density falls more slowly towards large spreads.
    expect(nodes[2]!.weight).toBeGreaterThan(2 * nodes[1]!.weight);
  });
});
