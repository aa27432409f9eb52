import { expect, it } from 'vitest';
import { currentRangeOf } from './current-range.ts';

it.each([
  [4, 5 / 32],
  [5, 3 / 16],
  [6.5, 1 / 4],
  [8, 5 / 16],
  [9.5, 3 / 8],
  [10, 3 / 8],
  [13, 1 / 2],
  [16, 5 / 8],
  [19, 3 / 4],
  [25, 1],
])('%d mm goes by %d in', (mm, inch) => {
  const metric = currentRangeOf({ diameter: mm / 1000 });
  expect(metric).toBeDefined();
  expect(metric).toEqual(currentRangeOf({ diameter: inch * 0.0254 }));
  expect(metric!.source.provenance).toBe('memory');
});

it('goes by the nearer of two sizes', () => {
  expect(currentRangeOf({ diameter: 0.0045 })).toEqual(currentRangeOf({ diameter: (3 / 16) * 0.0254 }));
  expect(currentRangeOf({ diameter: 0.0043 })).toEqual(currentRangeOf({ diameter: (5 / 32) * 0.0254 }));
});

it('has no range for a size that is far from any, unless the kit gives both ends', () => {
  for (const diameter of [0.003, 0.0112, 0.0143, 0.0225, 0.026])
    expect(currentRangeOf({ diameter })).toBeUndefined();
  expect(currentRangeOf({ diameter: 0.0112, current_least: 400 })).toBeUndefined();
  expect(currentRangeOf({ diameter: 0.0112, current_least: 400, current_most: 700 })).toMatchObject({
    least: 400,
    most: 700,
    source: { provenance: 'job file' },
  });
});

it('lets the shop’s own end stand in for the published one', () => {
  expect(currentRangeOf({ diameter: 0.0127, current_most: 900 })).toMatchObject({
    least: 600,
    most: 900,
    source: { provenance: 'job file' },
  });
});
