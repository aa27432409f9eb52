import { expect, it } from 'vitest';
import { drawStream } from '../numeric/index.ts';
import { fitRadius, type SectionPoint } from './circle-fit.ts';

function arc(radius: number, from: number, to: number, count: number, noise = 0, seed = 1): SectionPoint[] {
  const stream = drawStream(seed);
  return Array.from({ length: count }, (_, i) => {
    const angle = from + ((to - from) * i) / (count - 1);
    const r = radius + noise * stream.normal();
    return { offset: 0.3 + r * Math.sin(angle), depth: 0.1 + r * Math.cos(angle) };
  });
}

it.each([1e-3, 8e-3, 0.5])('finds the radius %d m of an exact arc, however short', (radius) => {
  for (const half of [0.2, 0.6, 1.5]) {
    expect(fitRadius(arc(radius, -half, half, 40))! / radius).toBeCloseTo(1, 7);
  }
});

it('needs three points, not more', () => {
  expect(fitRadius(arc(0.008, -1, 1, 3))).toBeCloseTo(0.008, 10);
  expect(fitRadius(arc(0.008, -1, 1, 2))).toBeUndefined();
});

it('finds the radius among noise: 0.05 mm on an 8 mm arc of 120 deg, off by less than 1 % in the mean', () => {
  const fits = Array.from(
    { length: 60 },
    (_, seed) => fitRadius(arc(0.008, -1.05, 1.05, 200, 5e-5, seed + 1))!,
  );
  const mean = fits.reduce((sum, radius) => sum + radius, 0) / fits.length;
  expect(Math.abs(mean / 0.008 - 1)).toBeLessThan(0.01);
  for (const radius of fits) expect(Math.abs(radius / 0.008 - 1)).toBeLessThan(0.03);
});

it('finds no circle through points on a line, or in one place', () => {
  const line = Array.from({ length: 9 }, (_, i) => ({ offset: i, depth: 2 * i + 1 }));
  expect(fitRadius(line)).toBeUndefined();
  expect(fitRadius(line.map((point) => ({ ...point, depth: 3 })))).toBeUndefined();
  expect(fitRadius(Array(5).fill({ offset: 1, depth: 1 }))).toBeUndefined();
});
