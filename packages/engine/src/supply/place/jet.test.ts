import { describe, expect, it } from 'vitest';
import type { BayPoint } from './bay.ts';
import { inJet, jetOutlines } from './jet.ts';
import { sideOf } from './plane.ts';

const seam: readonly BayPoint[] = [
  { x: 10, y: 5 },
  { x: 16, y: 5 },
];
const ahead = 8;

describe('where the jet throws', () => {
  it.each<[string, BayPoint, boolean, boolean]>([
    ['ahead of the end', { x: 18, y: 5 }, true, true],
    ['behind the start', { x: 8, y: 5 }, false, true],
    ['ahead, beyond its reach', { x: 24.1, y: 5 }, false, false],
    ['ahead, beside the cone', { x: 18, y: 8.1 }, false, false],
    ['ahead, within the cone of the start', { x: 18, y: 7.2 }, true, true],
    ['beside the middle of the seam', { x: 13, y: 8 }, false, false],
  ])('%s', (_, point, oneWay, bothWays) => {
    expect(inJet(point, seam, { ahead, bothWays: false })).toBe(oneWay);
    expect(inJet(point, seam, { ahead, bothWays: true })).toBe(bothWays);
  });

  it('turns with the seam', () => {
    const point = { x: 8, y: 5 };
    expect(inJet(point, seam.toReversed(), { ahead, bothWays: false })).toBe(true);
  });

  it('is outlined by what is in it', () => {
    const jet = { ahead, bothWays: false };
    const outlines = jetOutlines(seam, jet);
    for (let x = 5.05; x < 26; x += 0.5) {
      for (let y = 0.05; y < 10; y += 0.5) {
        const drawn = outlines.some((outline) => sideOf({ x, y }, outline) === 'inside');
        // The far end is drawn in straight pieces: near it either may be said.
        if (Math.abs(Math.hypot(x - 16, y - 5) - ahead) < 0.1) continue;
        expect(inJet({ x, y }, seam, jet), `${x} ${y}`).toBe(drawn);
      }
    }
  });
});
