import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { drawStream } from '../draw-stream.ts';
import { evenWeights, type NestedGroup, nestedModel, outlierWeights, solveNested } from './nested-model.ts';
import { noiseSquares, seamReadings } from './seam-readings.ts';

const RANGE = 0.25;
const SDS = { group: 0.06, pass: 0.04, seam: 0.045 };
const PRIOR = {
  mean: [-0.8, 1.4],
  precision: [
    [4, 1],
    [1, 6],
  ],
};

/** Groups of one to three passes with one to six readings at uneven places. */
function invented(seed: number): NestedGroup[] {
  const stream = drawStream(seed);
  return Array.from(
    { length: 4 },
    (_, g): NestedGroup =>
      Array.from({ length: 1 + (g % 3) }, () => ({
        columns: [0, 1],
        regressors: [1, stream.normal()],
        ...(g === 3 && { share: 0.4 }),
        readings: Array.from({ length: 1 + Math.floor(6 * stream.uniform()) }, () => ({
          place: 2 * stream.uniform(),
          value: -0.5 + 0.3 * stream.normal(),
          variance: 0.0004 + 0.001 * stream.uniform(),
        })),
      })),
  );
}

/** The same by one dense covariance of all readings: another way than the engine's. */
function dense(groups: readonly NestedGroup[]) {
  const rows = groups.flatMap((passes, g) =>
    passes.flatMap((pass, p) =>
      pass.readings.map((reading) => ({ g, p, x: pass.regressors, share: pass.share ?? 1, ...reading })),
    ),
  );
  const covariance = new Matrix(
    rows.map((a) =>
      rows.map((b) => {
        const r = (Math.sqrt(3) * Math.abs(a.place - b.place)) / RANGE;
        const samePass = a.g === b.g && a.p === b.p;
        return (
          (a.g === b.g ? SDS.group ** 2 : 0) +
          (samePass ? a.share * (SDS.pass ** 2 + SDS.seam ** 2 * (1 + r) * Math.exp(-r)) : 0) +
          (a === b ? a.variance : 0)
        );
      }),
    ),
  );
  return { rows, covariance };
}

describe('solveNested', () => {
  it.each([1, 2, 3])('is what one dense covariance of all readings gives (seed %d)', (seed) => {
    const groups = invented(seed);
    const { rows, covariance } = dense(groups);
    const x = new Matrix(rows.map((row) => [...row.x]));
    const y = Matrix.columnVector(rows.map(({ value }) => value));
    const inverse = new CholeskyDecomposition(covariance).solve(Matrix.eye(rows.length));
    const before = new Matrix(PRIOR.precision);
    const precision = Matrix.add(x.transpose().mmul(inverse).mmul(x), before);
    const pull = Matrix.add(
      x.transpose().mmul(inverse).mmul(y),
      before.mmul(Matrix.columnVector(PRIOR.mean)),
    );
    const mean = new CholeskyDecomposition(precision.clone().add(precision.transpose()).mul(0.5)).solve(pull);
    const model = nestedModel(groups, 2, RANGE);
    const solved = solveNested(model, SDS, PRIOR, evenWeights(model));
    mean.to1DArray().forEach((value, i) => {
      expect(solved.mean[i]!).toBeCloseTo(value, 9);
    });
    const told = new Matrix(solved.covariance()).mmul(precision);
    expect(Matrix.sub(told, Matrix.eye(2)).norm()).toBeLessThan(1e-8);
  });

  it.each([4, 5])('has the marginal likelihood of the dense covariance (seed %d)', (seed) => {
    const groups = invented(seed);
    const { rows, covariance } = dense(groups);
    // Coefficients integrated out: their prior covariance seen through the regressors.
    const priorCovariance = new CholeskyDecomposition(new Matrix(PRIOR.precision)).solve(Matrix.eye(2));
    const x = new Matrix(rows.map((row) => [...row.x]));
    const full = Matrix.add(covariance, x.mmul(priorCovariance).mmul(x.transpose()));
    const factor = new CholeskyDecomposition(Matrix.add(full, full.transpose()).mul(0.5));
    const left = Matrix.columnVector(
      rows.map(({ value, x: at }) => value - at[0]! * PRIOR.mean[0]! - at[1]! * PRIOR.mean[1]!),
    );
    const square = left.transpose().mmul(factor.solve(left)).get(0, 0);
    const determinant = factor.lowerTriangularMatrix
      .diagonal()
      .reduce((sum, value) => sum + 2 * Math.log(value), 0);
    const model = nestedModel(groups, 2, RANGE);
    const { logMarginal } = solveNested(model, SDS, PRIOR, evenWeights(model));
    expect(logMarginal).toBeCloseTo(-0.5 * (square + determinant), 8);
  });

  it('takes readings in any order', () => {
    const groups = invented(6);
    const turned = groups.map((passes) =>
      passes.map((pass) => ({ ...pass, readings: [...pass.readings].reverse() })),
    );
    const solve = (of: readonly NestedGroup[]): number => {
      const model = nestedModel(of, 2, RANGE);
      return solveNested(model, SDS, PRIOR, evenWeights(model)).logMarginal;
    };
    expect(solve(turned)).toBeCloseTo(solve(groups), 10);
  });
});

describe('noiseSquares', () => {
  it('is what a dense covariance gives', () => {
    const readings = [0.1, 0.15, 0.4, 1.2].map((place, i) => ({
      place,
      value: 0.05 * i - 0.02,
      variance: 0.0004 * (1 + i),
    }));
    const level = 0.03;
    const size = readings.length;
    const total = new Matrix(
      readings.map((a) =>
        readings.map((b) => {
          const r = (Math.sqrt(3) * Math.abs(a.place - b.place)) / RANGE;
          return SDS.seam ** 2 * (1 + r) * Math.exp(-r) + (a === b ? a.variance : 0);
        }),
      ),
    );
    const inverse = new CholeskyDecomposition(total).solve(Matrix.eye(size));
    const pulled = inverse.mmul(Matrix.columnVector(readings.map(({ value }) => value - level)));
    const seen = noiseSquares(seamReadings(readings, RANGE), SDS.seam, level, new Float64Array(size).fill(1));
    readings.forEach(({ variance }, i) => {
      const mean = variance * pulled.get(i, 0);
      const expected = (mean ** 2 + variance - variance ** 2 * inverse.get(i, i)) / variance;
      expect(seen[i]!).toBeCloseTo(expected, 10);
    });
  });
});

describe('outlierWeights', () => {
  /** Twelve groups of two passes of three readings about -0.5, as good as their levels. */
  const plain = (change: (g: number, p: number, i: number) => number): NestedGroup[] => {
    const stream = drawStream(9);
    return Array.from({ length: 12 }, (_, g) => {
      const group = SDS.group * stream.normal();
      return [0, 1].map((p) => {
        const pass = group + SDS.pass * stream.normal();
        return {
          columns: [0],
          regressors: [1],
          readings: [0.2, 1, 1.8].map((place, i) => ({
            place,
            value: -0.5 + pass + SDS.seam * stream.normal() + change(g, p, i),
            variance: 0.03 ** 2,
          })),
        };
      });
    });
  };
  const settled = (groups: readonly NestedGroup[]) => {
    const model = nestedModel(groups, 1, RANGE);
    let weights = evenWeights(model);
    for (let step = 0; step < 8; step += 1) weights = outlierWeights(model, SDS, undefined, weights);
    return { weights, mean: solveNested(model, SDS, undefined, weights).mean[0]! };
  };

  it('leaves good readings nearly alone', () => {
    const { weights } = settled(plain(() => 0));
    expect(Math.min(...weights.group)).toBeGreaterThan(0.6);
    expect(weights.reading.flat().every((each) => Math.min(...each) > 0.5)).toBe(true);
  });

  it('finds the one reading that is off, and hardly follows it', () => {
    const { weights, mean } = settled(plain((g, p, i) => (g === 3 && p === 1 && i === 2 ? 0.7 : 0)));
    expect(weights.reading[3]![1]![2]!).toBeLessThan(0.1);
    expect(weights.reading.flat().filter((each) => Math.min(...each) < 0.3)).toHaveLength(1);
    expect(Math.abs(mean - settled(plain(() => 0)).mean)).toBeLessThan(0.005);
  });

  it('finds the group that is off as a group, and hardly follows it', () => {
    const { weights, mean } = settled(plain((g) => (g === 5 ? -0.6 : 0)));
    expect(weights.group[5]!).toBeLessThan(0.1);
    expect([...weights.group].filter((each) => each < 0.3)).toHaveLength(1);
    expect(Math.abs(mean - settled(plain(() => 0)).mean)).toBeLessThan(0.015);
  });
});
