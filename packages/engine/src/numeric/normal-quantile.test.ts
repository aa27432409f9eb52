import { expect, it } from 'vitest';
import { normalQuantile } from './normal-quantile.ts';

it('is odd about one half and rises', () => {
  expect(normalQuantile(0.5)).toBe(0);
  let before = Number.NEGATIVE_INFINITY;
  for (let step = 1; step < 1000; step += 1) {
    const share = step / 1000;
    const value = normalQuantile(share);
    expect(value).toBeGreaterThan(before);
    expect(value).toBeCloseTo(-normalQuantile(1 - share), 11);
    before = value;
  }
});

it('passes from one approximation to the next without a jump', () => {
  for (const seam of [0.075, 0.925, Math.exp(-25), 1 - 1e-11]) {
    const step = 1e-9 * Math.min(seam, 1 - seam);
    const slope = (normalQuantile(seam + step) - normalQuantile(seam - step)) / (2 * step);
    const density = Math.exp((-1 * normalQuantile(seam) ** 2) / 2) / Math.sqrt(2 * Math.PI);
    expect(Math.abs(normalQuantile(seam + step) - normalQuantile(seam - step))).toBeLessThan(1e-6);
    if (seam < 0.99) expect(slope * density).toBeCloseTo(1, 4);
  }
});

it('reaches far into the tails', () => {
  expect(normalQuantile(1e-300)).toBeCloseTo(-37.0471, 4);
  expect(normalQuantile(Number.MIN_VALUE)).toBeLessThan(-38);
});
