import { describe, expect, it } from 'vitest';
import { drawStream } from '../numeric/index.ts';
import { estimateOf } from './estimate.ts';
import { simulate } from './simulate.ts';

describe('the half width of a percentile', () => {
  it('holds the true percentile in about 95 of 100 samples', () => {
    const runs = 400;
    let median = 0;
    let upper = 0;
    for (let run = 0; run < runs; run += 1) {
      const [sample] = simulate(800, 1000 + run, 1, (stream, row) => {
        row[0] = stream.normal();
      });
      const { p50, p90, p50HalfWidth, p90HalfWidth } = estimateOf(sample!);
      if (Math.abs(p50) <= p50HalfWidth) median += 1;
      if (Math.abs(p90 - 1.281551566) <= p90HalfWidth) upper += 1;
    }
    for (const share of [median / runs, upper / runs]) {
      expect(share).toBeGreaterThan(0.91);
      expect(share).toBeLessThan(0.985);
    }
  });

  it('shrinks with the root of the number of trials', () => {
    const width = (trials: number): number => {
      const stream = drawStream(4);
      return estimateOf(Float64Array.from({ length: trials }, () => stream.normal())).p50HalfWidth;
    };
    expect(width(1000) / width(16_000)).toBeGreaterThan(3);
    expect(width(1000) / width(16_000)).toBeLessThan(5);
  });
});
