import { describe, expect, it } from 'vitest';
import { type DrawStream, drawStream, stratifiedNormals } from './draw-stream.ts';
import { normalQuantile } from './normal-quantile.ts';

const COUNT = 40_000;

function moments(draw: () => number): { mean: number; variance: number } {
  const draws = Array.from({ length: COUNT }, draw);
  const mean = draws.reduce((sum, value) => sum + value, 0) / COUNT;
  return { mean, variance: draws.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (COUNT - 1) };
}

/** Four standard errors: what a seeded test may be away from the truth. */
const within = (spread: number): number => (4 * spread) / Math.sqrt(COUNT);

describe('drawStream', () => {
  it('gives the same draws for the same seed, other ones for another', () => {
    const ten = (seed: number): number[] => {
      const stream = drawStream(seed);
      return Array.from({ length: 10 }, (_, i) =>
        i % 3 === 0 ? stream.uniform() : i % 3 === 1 ? stream.normal() : stream.gamma(2.5),
      );
    };
    expect(ten(7)).toEqual(ten(7));
    expect(ten(7)).not.toEqual(ten(8));
    expect(new Set([0, 1, 2, 3, 2 ** 31 - 1].map((seed) => drawStream(seed).uniform())).size).toBe(5);
  });

  it('gives the draws it gave when this test was written, so that old plans can be made again', () => {
    const stream = drawStream(1);
    expect(stream.uniform()).toBe(0.6305594528462224);
    expect(stream.normal()).toBeCloseTo(-1.1936801342953092, 12);
    expect(stream.gamma(3)).toBeCloseTo(2.3922102283073823, 12);
  });

  it('is uniform between 0 and 1', () => {
    const stream = drawStream(3);
    const { mean, variance } = moments(() => stream.uniform());
    expect(Math.abs(mean - 1 / 2)).toBeLessThan(within(Math.sqrt(1 / 12)));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(within(Math.sqrt(1 / 180)));
    for (let i = 0; i < 1000; i += 1) {
      const value = stream.uniform();
      expect(value > 0 && value < 1).toBe(true);
    }
  });

  it('is normal with mean 0 and variance 1', () => {
    const stream = drawStream(4);
    const { mean, variance } = moments(() => stream.normal());
    expect(Math.abs(mean)).toBeLessThan(within(1));
    expect(Math.abs(variance - 1)).toBeLessThan(within(Math.SQRT2));
  });

  it.each([0.3, 1, 2.5, 7, 40])('is gamma of shape %d: mean and variance are the shape', (shape) => {
    const stream = drawStream(5);
    const { mean, variance } = moments(() => stream.gamma(shape));
    expect(Math.abs(mean - shape)).toBeLessThan(within(Math.sqrt(shape)));
    // Variance of the sample variance: kappa4 + 2 sigma^4, with kappa4 = 6 shape.
    expect(Math.abs(variance - shape)).toBeLessThan(within(Math.sqrt(6 * shape + 2 * shape * shape)));
  });
});

describe('stratifiedNormals', () => {
  it('holds one draw of each slice', () => {
    const count = 64;
    const draws = [...stratifiedNormals(drawStream(9), count)].sort((a, b) => a - b);
    draws.forEach((draw, slice) => {
      if (slice > 0) expect(draw).toBeGreaterThanOrEqual(normalQuantile(slice / count));
      if (slice < count - 1) expect(draw).toBeLessThanOrEqual(normalQuantile((slice + 1) / count));
    });
  });

  it('has a mean that varies far less than that of plain draws', () => {
    const variance = (mean: (stream: DrawStream) => number): number => {
      const means = Array.from({ length: 200 }, (_, seed) => mean(drawStream(seed + 1)));
      return means.reduce((sum, value) => sum + value * value, 0) / means.length;
    };
    const average = (draws: Iterable<number>): number => {
      const all = [...draws];
      return all.reduce((sum, value) => sum + value, 0) / all.length;
    };
    const stratified = variance((stream) => average(stratifiedNormals(stream, 100)));
    const plain = variance((stream) => average(Array.from({ length: 100 }, () => stream.normal())));
    expect(plain).toBeGreaterThan(0.006);
    expect(plain).toBeLessThan(0.015);
    expect(stratified).toBeLessThan(plain / 50);
  });

  it('comes in random order: neighbours are not related, two sets neither', () => {
    const stream = drawStream(2);
    const [a, b] = [stratifiedNormals(stream, 4000), stratifiedNormals(stream, 4000)];
    const product = (x: Float64Array, y: Float64Array, shift: number): number =>
      x.reduce((sum, value, i) => sum + value * y[(i + shift) % y.length]!, 0) / x.length;
    expect(Math.abs(product(a, a, 1))).toBeLessThan(4 / Math.sqrt(4000));
    expect(Math.abs(product(a, b, 0))).toBeLessThan(4 / Math.sqrt(4000));
  });

  it('gives the same bytes for the same seed', () => {
    expect(stratifiedNormals(drawStream(6), 100)).toEqual(stratifiedNormals(drawStream(6), 100));
  });
});
