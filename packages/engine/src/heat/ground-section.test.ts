import { expect, it } from 'vitest';
import { groundSection } from './ground-section.ts';

const floor = (depth: (offset: number) => number, half: number) =>
  Array.from({ length: 2001 }, (_, i) => {
    const offset = -half + (2 * half * i) / 2000;
    return { offset, depth: depth(offset) };
  });

it('takes nothing off with no allowance', () => {
  const { gouged, ground } = groundSection(
    floor((y) => 0.006 - 50 * y * y, 0.0109),
    0,
  );
  expect(ground).toBe(gouged);
});

it('leaves the surface beside the groove alone', () => {
  const groove = floor((y) => (Math.abs(y) < 0.005 ? 0.008 : 0), 0.05);
  const { gouged, ground } = groundSection(groove, 0.001);
  // a slot: its three sides move out by 1 mm and its two lower corners are rounded
  const exact = 0.01 * 0.001 + 2 * 0.008 * 0.001 + (Math.PI / 2) * 0.001 ** 2;
  expect(Math.abs((ground - gouged) / exact - 1)).toBeLessThan(0.02);
});

it('wears a ridge between two tracks down from both sides', () => {
  const track = (y: number, at: number) => 0.006 - 60 * (y - at) ** 2;
  const twin = floor((y) => Math.max(0, track(y, -0.006), track(y, 0.006)), 0.03);
  const single = floor((y) => Math.max(0, track(y, 0)), 0.03);
  const added = (each: typeof twin) => {
    const { gouged, ground } = groundSection(each, 0.0015);
    return ground - gouged;
  };
  expect(added(twin)).toBeLessThan(2 * added(single));
  expect(added(twin)).toBeGreaterThan(added(single));
});

it('has nothing to grind where nothing is gouged', () => {
  expect(groundSection([], 0.0015)).toEqual({ gouged: 0, ground: 0 });
  expect(
    groundSection(
      floor(() => 0, 0.02),
      0.0015,
    ),
  ).toEqual({ gouged: 0, ground: 0 });
});
