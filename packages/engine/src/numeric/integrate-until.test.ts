import { describe, expect, it } from 'vitest';
import { integrateUntil } from './integrate-until.ts';

const options = { relative: 1e-9, absolute: 1e-12 };

describe('integrateUntil', () => {
  it('follows an oscillator over ten turns', () => {
    const { states } = integrateUntil(
      (_, [x, v]) => [v!, -x!],
      { time: 0, state: [1, 0] },
      20 * Math.PI,
      options,
    );
    expect(Math.abs(states.at(-1)![0]! - 1)).toBeLessThan(1e-6);
    expect(Math.abs(states.at(-1)![1]!)).toBeLessThan(1e-6);
  });

  it('stops at the event, to the accuracy of its steps', () => {
    const run = integrateUntil((_, [y]) => [-y!], { time: 0, state: [8] }, 100, {
      ...options,
      event: (_, [y]) => y! - 2,
    });
    expect(run.stopped).toBe(true);
    expect(Math.abs(run.times.at(-1)! - Math.log(4))).toBeLessThan(1e-8);
  });

  it('reaches the end exactly where no event comes', () => {
    const run = integrateUntil(() => [1], { time: 0, state: [0] }, 3, {
      ...options,
      event: (_, [y]) => 9 - y!,
    });
    expect(run.stopped).toBe(false);
    expect(run.times.at(-1)).toBe(3);
    expect(run.states.at(-1)![0]).toBeCloseTo(3, 12);
  });
});
