import { describe, expect, it } from 'vitest';
import { type PatternWish, patternsFor, trackOffset } from './pattern.ts';

const WISH: PatternWish = {
  passWidth: 16e-3,
  surfaceWidth: 14e-3,
  widthLeast: 20e-3,
  widthMost: 40e-3,
  tracksMost: 6,
  tracksLocked: undefined,
  spacingLocked: undefined,
};

describe('Track offsets', () => {
  it('are even and centred', () => {
    expect([0, 1, 2].map((track) => trackOffset({ tracks: 3, spacing: 5e-3 }, track))).toEqual([
      -5e-3, 0, 5e-3,
    ]);
    expect(trackOffset({ tracks: 1, spacing: 0 }, 0)).toBe(0);
  });
});

describe('Patterns', () => {
  it('keep the median width inside the band', () => {
    const patterns = patternsFor(WISH);
    expect(patterns.length).toBeGreaterThan(0);
    for (const { tracks, spacing } of patterns) {
      const width = WISH.surfaceWidth + (tracks - 1) * spacing;
      expect(width).toBeGreaterThanOrEqual(WISH.widthLeast);
      expect(width).toBeLessThanOrEqual(WISH.widthMost);
    }
  });

  it('have one track only where one pass is wide enough by itself', () => {
    expect(patternsFor(WISH).some(({ tracks }) => tracks === 1)).toBe(false);
    expect(patternsFor({ ...WISH, widthLeast: 12e-3 })).toContainEqual({ tracks: 1, spacing: 0 });
  });

  it('have the locked number of tracks and spacing, and none where these miss the band', () => {
    expect(patternsFor({ ...WISH, tracksLocked: 3 }).every(({ tracks }) => tracks === 3)).toBe(true);
    expect(patternsFor({ ...WISH, tracksLocked: 2, spacingLocked: 9e-3 })).toEqual([
      { tracks: 2, spacing: 9e-3 },
    ]);
    expect(patternsFor({ ...WISH, tracksLocked: 2, spacingLocked: 30e-3 })).toEqual([]);
  });

  it('are none where no number of tracks fits', () => {
    expect(patternsFor({ ...WISH, widthLeast: 5e-3, widthMost: 8e-3 })).toEqual([]);
  });
});
