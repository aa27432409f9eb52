import { describe, expect, it } from 'vitest';
import { bracketedRoot } from './bracketed-root.ts';

describe('bracketedRoot', () => {
  it.each([
    ['cubic', (x: number) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
    ['steep exponential', (x: number) => Math.exp(20 * x) - 1e4, 0, 10, Math.log(1e4) / 20],
    ['infinite slope', (x: number) => Math.cbrt(x - 0.3), -1, 5, 0.3],
    ['kink', (x: number) => Math.max(x - 1, 50 * (x - 0.7)), 0, 9, 0.7],
    ['root beside an old end', (x: number) => Math.expm1(x) - Math.expm1(1e-6), 0, 1, 1e-6],
    ['bracket given backwards', (x: number) => x - 0.25, 1, 0, 0.25],
  ])('finds the crossing: %s', (_, f, low, high, root) => {
    expect(Math.abs(bracketedRoot(f, low, high, 1e-14)! - root)).toBeLessThan(1e-12);
  });

  it('takes far fewer evaluations than halving', () => {
    let calls = 0;
    const cubic = (x: number): number => {
      calls += 1;
      return x ** 3 - 2 * x - 5;
    };
    bracketedRoot(cubic, 2, 3, 1e-14);
    expect(calls).toBeLessThan(15);
  });

  it('does not extrapolate', () => {
    expect(bracketedRoot((x) => x * x + 1, -1, 1, 1e-9)).toBeUndefined();
  });
});
