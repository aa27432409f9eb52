import fc from 'fast-check';
import { expect, it } from 'vitest';
import { keptHeat } from './kept-heat.ts';

const PASS = { current: 900, voltage: 42, travel: 0.012, area: 6e-5, face: 0.02, duration: 1 };
const MELTING = { energy: 1.01427e10, face: 1.67e7 };

it('leaves the plate what reaches the work less what leaves with the melt, in order', () => {
  const { gross, withMelt, share } = keptHeat(PASS, MELTING, {});
  expect(gross).toBe((900 * 42) / 0.012);
  expect(withMelt).toBeGreaterThan(PASS.area * MELTING.energy);
  expect(share.least).toBeGreaterThan(0);
  expect(share.least).toBeLessThan(share.middle);
  expect(share.middle).toBeLessThan(share.most);
  expect(share.middle * gross + withMelt).toBeCloseTo(0.67 * gross, 3);
});

it.each([
  [
    { least: 0.3, most: 0.4 },
    { least: 0.3, middle: 0.35, most: 0.4 },
  ],
  [{ least: 0.9 }, { least: 0.9, middle: 0.9, most: 0.9 }],
  [{ most: 0.1 }, { least: 0.1, middle: 0.1, most: 0.1 }],
])('takes the share that the job states: %o', (stated, expected) => {
  expect(keptHeat(PASS, MELTING, stated).share).toEqual(expected);
});

it('keeps what is not stated where it was', () => {
  const free = keptHeat(PASS, MELTING, {}).share;
  expect(keptHeat(PASS, MELTING, { least: free.least + 0.01 }).share).toEqual({
    ...free,
    least: free.least + 0.01,
  });
  expect(keptHeat(PASS, MELTING, { most: free.most - 0.01 }).share).toEqual({
    ...free,
    most: free.most - 0.01,
  });
});

it('keeps a band open and in order whatever is cut, with what leaves no more than there is', () => {
  const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      range(100, 2000),
      range(1e-3, 0.05),
      range(1e-6, 4e-4),
      range(0.005, 0.06),
      (current, travel, area, face) => {
        const pass = { current, voltage: 40, travel, area, face, duration: 0.012 / travel };
        const { share, gross } = keptHeat(pass, MELTING, {});
        expect(share.least).toBeGreaterThan(0);
        expect(share.middle).toBeGreaterThan(share.least);
        expect(share.most).toBeGreaterThan(share.middle);
        const melted = (area * MELTING.energy) / gross;
        if (melted < 0.97) expect(share.most + melted).toBeLessThanOrEqual(1 + 1e-12);
        const less = keptHeat({ ...pass, area: area * 0.8 }, MELTING, {}).share;
        expect(less.most).toBeGreaterThanOrEqual(share.most - 1e-12);
      },
    ),
    { seed: 20240706, numRuns: 300 },
  );
});

it('keeps at least what heats the face to melting while the arc lies over it', () => {
  const { share, gross } = keptHeat({ ...PASS, area: 1.4e-4 }, MELTING, {});
  expect(share.least * gross).toBeCloseTo(0.02 * 1.67e7, 3);
});
