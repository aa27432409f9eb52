import { describe, expect, it } from 'vitest';
import { chebyshevStages, STIFFNESS_MOST, stagesFor } from './chebyshev-stages.ts';
import { STAGE_NUMBERS, STAGES_MOST } from './diffusion-layout.ts';

/** What a step makes of y' = -rate y from 1. */
function decayOf(stages: number, rate: number): number {
  const numbers = new Float64Array(STAGE_NUMBERS * STAGES_MOST);
  chebyshevStages(stages, 1, numbers);
  let before = 1;
  let last = 1 - numbers[4]! * rate;
  for (let j = 1; j < stages; j += 1) {
    const [c0, c1, c2, cf, cg] = numbers.subarray(STAGE_NUMBERS * j) as unknown as number[];
    const next = c0! + c1! * last + c2! * before - rate * (cf! * last + cg!);
    before = last;
    last = next;
  }
  return last;
}

describe('Chebyshev stages', () => {
  it.each([2, 3, 7, 40, STAGES_MOST])('%i of them stay stable as far as they are used for', (stages) => {
    const most = ((stages - 1) ** 2 - 1) / 1.54;
    for (let share = 0; share <= 1; share += 1 / 64) {
      expect(Math.abs(decayOf(stages, most * share))).toBeLessThanOrEqual(1 + 1e-9);
    }
  });

  it('follow a slow decay to the third power of the step', () => {
    for (const stages of [2, 5, 20])
      expect(Math.abs(decayOf(stages, 0.01) - Math.exp(-0.01))).toBeLessThan(2e-7);
  });

  it('are as few as the step allows, and never more than there is room for', () => {
    expect(stagesFor(0)).toBe(2);
    expect(stagesFor(100)).toBe(13);
    expect(stagesFor(STIFFNESS_MOST)).toBeLessThanOrEqual(STAGES_MOST);
  });
});
