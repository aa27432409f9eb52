import type { Plan } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { doubtWords, worthWords } from './doubt-words.ts';

const PLAN = {
  doubt: { family: 0.02, job: 0.01, pass: 0.2, seam: 0.6, gauge: 0.17 },
  worth_measuring: [
    { what: 'station', saves_cost: 0.4, saves_time_s: -59 },
    { what: 'finer_gauge', saves_cost: 3.17, saves_time_s: 2.1 },
  ],
  currency: 'EUR',
} as unknown as Plan;

describe('doubtWords', () => {
  it('names the parts of the doubt, greatest first, and what measuring more is worth most', () => {
    expect(doubtWords(PLAN)).toBe(
      'Doubt about the depth: along the seam 60 %, each pass 20 %, the gauge 17 %. Measuring more is worth most by a gauge twice as fine: it saves 3.17 EUR, saves 2.1 s on the mean.',
    );
  });

  it('says nothing of measuring where it would save nothing', () => {
    const worth_measuring = [{ what: 'station' as const, saves_cost: -0.2, saves_time_s: -30 }];
    expect(doubtWords({ ...PLAN, worth_measuring })).not.toContain('worth');
    expect(doubtWords({ ...PLAN, worth_measuring: [] })).not.toContain('worth');
  });
});

describe('worthWords', () => {
  it.each([
    [0.4, -59, 'saves 0.40 EUR, takes 59 s'],
    [-1, 120, 'costs 1.00 EUR, saves 2 min'],
    [0, 0, 'changes nothing'],
  ])('of %d and %d s are %s', (saves_cost, saves_time_s, words) => {
    expect(worthWords({ what: 'station', saves_cost, saves_time_s }, 'EUR').saves).toBe(words);
  });
});
