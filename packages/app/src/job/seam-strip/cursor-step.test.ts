import { describe, expect, it } from 'vitest';
import { cursorAfterKey } from './cursor-step.ts';

const RANGE = { from: -0.024, to: 0.204 };

describe('cursorAfterKey', () => {
  it('steps by a hundredth and a tenth of the way', () => {
    expect(cursorAfterKey('ArrowRight', 0, RANGE)).toBeCloseTo(0.00228, 12);
    expect(cursorAfterKey('ArrowLeft', 0, RANGE)).toBeCloseTo(-0.00228, 12);
    expect(cursorAfterKey('PageUp', 0, RANGE)).toBeCloseTo(0.0228, 12);
  });

  it('stays between the ends', () => {
    expect(cursorAfterKey('PageDown', -0.02, RANGE)).toBe(RANGE.from);
    expect(cursorAfterKey('ArrowUp', 0.204, RANGE)).toBe(RANGE.to);
    expect(cursorAfterKey('End', 0, RANGE)).toBe(RANGE.to);
    expect(cursorAfterKey('Home', 0, RANGE)).toBe(RANGE.from);
  });

  it('leaves other keys alone', () => {
    expect(cursorAfterKey('Tab', 0, RANGE)).toBeUndefined();
  });
});
