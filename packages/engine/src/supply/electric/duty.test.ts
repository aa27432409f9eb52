import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcMinutesInTen } from './duty.ts';

const on = (duration: number) => ({ arc: true, duration });
const off = (duration: number) => ({ arc: false, duration });

describe('arcMinutesInTen', () => {
  it.each([
    ['one long cut', [on(3600)], 10],
    ['a short one', [on(90)], 1.5],
    ['no arc', [off(600)], 0],
    ['the worst window starts inside a cut', [on(100), off(400), on(300), off(100), on(300)], 500 / 60],
    ['the worst window ends with the last cut', [on(50), off(500), on(200), off(300), on(400)], 400 / 60],
  ])('%s', (_, duty, minutes) => {
    const brute = bruteForce(duty);
    expect(brute).toBeCloseTo(minutes, 1);
    expect(arcMinutesInTen(duty)).toBeCloseTo(minutes, 10);
  });

  it('is what sliding a window second by second finds', () => {
    const interval = fc.record({ arc: fc.boolean(), duration: fc.integer({ min: 0, max: 700 }) });
    fc.assert(
      fc.property(fc.array(interval, { minLength: 1, maxLength: 6 }), (duty) => {
        expect(arcMinutesInTen(duty)).toBeCloseTo(bruteForce(duty), 8);
      }),
      { seed: 20260310, numRuns: 100 },
    );
  });
});

/** Durations are whole seconds, so the worst window starts at one. */
function bruteForce(duty: readonly { readonly arc: boolean; readonly duration: number }[]): number {
  const seconds = duty.flatMap(({ arc, duration }) => Array<number>(duration).fill(arc ? 1 : 0));
  const before = [0];
  for (const second of seconds) before.push(before.at(-1)! + second);
  let most = 0;
  for (let start = 0; start < before.length; start += 1) {
    const end = Math.min(before.length - 1, start + 600);
    most = Math.max(most, before[end]! - before[start]!);
  }
  return most / 60;
}
