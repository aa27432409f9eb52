import { describe, expect, it } from 'vitest';
import { drawStream } from '../../numeric/index.ts';
import { fuseSeam } from './fuse-seam.ts';

const SPREAD = { common: 0.25, course: 0.045, range: 0.25 };

function readingsOf(count: number, length: number) {
  const draws = drawStream(5);
  return Array.from({ length: count }, () => ({
    at: length * draws.uniform(),
    value: 0.1 * draws.normal(),
    sd: 0.02 + 0.03 * draws.uniform(),
  }));
}

const AT = Array.from({ length: 61 }, (_, i) => i * 0.1);

describe('fusing along a seam', () => {
  it('is the prediction without readings, and far from them in its course alone', () => {
    const none = fuseSeam(SPREAD, [], [1, 2]);
    expect(none.mean).toEqual([0, 0]);
    expect(none.sd[0]).toBeCloseTo(Math.hypot(0.25, 0.045), 12);
    const far = fuseSeam(SPREAD, [{ at: 0, value: 0.3, sd: 1e-3 }], [0, 5.9]);
    expect(far.mean[0]).toBeCloseTo(0.3, 4);
    // the reading tells common part and course together; the course has forgotten it 5.9 m on
    expect(far.mean[1]).toBeCloseTo((0.3 * 0.25 ** 2) / (0.25 ** 2 + 0.045 ** 2), 4);
  });
});

describe('covariances and draws of the states', () => {
  it('agree with each other and with the variances', () => {
    const fused = fuseSeam(SPREAD, readingsOf(8, 6), AT);
    const stream = drawStream(11);
    const count = 4000;
    const sums = new Float64Array(AT.length);
    const products = new Float64Array(AT.length);
    const pivot = 20;
    for (let k = 0; k < count; k += 1) {
      const course = fused.draw(stream);
      for (let i = 0; i < AT.length; i += 1) {
        sums[i]! += course[i]! - fused.mean[i]!;
        products[i]! += (course[i]! - fused.mean[i]!) * (course[pivot]! - fused.mean[pivot]!);
      }
    }
    const covariance = fused.covarianceWith(pivot);
    expect(covariance[pivot]).toBeCloseTo(fused.sd[pivot]! ** 2, 10);
    for (let i = 0; i < AT.length; i += 1) {
      const scale = fused.sd[i]! * fused.sd[pivot]!;
      expect(Math.abs(products[i]! / count - covariance[i]!) / scale).toBeLessThan(0.08);
      expect(Math.abs(sums[i]! / count) / fused.sd[i]!).toBeLessThan(0.08);
    }
  });
});
