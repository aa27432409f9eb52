import type { SurveySeam } from '@furrow/engine';
import { describe, expect, test } from 'vitest';
import { gaugeLength, recutWords, seamVerdictWords, spreadLength, stretchWords } from './survey-words.ts';

type Stretch = SurveySeam['stretches'][number];

const stretch = (from_mm: number, to_mm: number, verdict: Stretch['verdict']): Stretch => ({
  from_mm,
  to_mm,
  verdict,
  simple_acceptance: 'holds',
  miss: 'none',
  chance_wrong_accept: 0.02,
  chance_wrong_reject: 0.98,
});

describe('a survey in words', () => {
  test('counts the length of each verdict, the worst first', () => {
    const stretches = [
      stretch(0, 1000, 'holds'),
      stretch(1000, 3000, 'fails'),
      stretch(3000, 3500, 'in_doubt'),
      stretch(3500, 6000, 'holds'),
    ];
    expect(seamVerdictWords({ verdict: 'fails', stretches } as unknown as SurveySeam, 'metric')).toBe(
      'The groove fails: 2.00 m fails, 500 mm in doubt, 3.50 m holds.',
    );
  });

  test.each([
    [0.004, 'below 1 %'],
    [0.02, '2 %'],
    [0.97, '97 %'],
    [0.996, 'above 99 %'],
  ])('tells a chance of %d as %s', (chance_wrong_accept, words) => {
    const told = stretchWords({ ...stretch(0, 1, 'holds'), chance_wrong_accept });
    expect(told).toBe(`chance that it is out somewhere: ${words}`);
  });

  test('tells a reading to the thousandth of an inch and a spread to a tenth of that', () => {
    expect([gaugeLength(12.7, 'inch'), gaugeLength(12.74, 'metric')]).toEqual(['0.500 in', '12.7 mm']);
    expect([spreadLength(0.254, 'inch'), spreadLength(0.254, 'metric')]).toEqual(['0.0100 in', '0.254 mm']);
  });

  test('tells a repair pass with its settings', () => {
    const plan = {
      kind: 'pass',
      start_mm: 980,
      end_mm: 3020,
      run_in_mm: 20,
      take_off_mm: 2.5,
      travel_mm_per_min: 600,
      current_A: 450,
      arc_voltage_V: 40,
      chance_reached: 0.97,
      chance_not_too_deep: 0.88,
      says: [],
    } as const;
    const [metric] = recutWords({ from_mm: 1000, to_mm: 3000, plan: { ...plan, says: [] } }, 'metric');
    expect(metric).toContain('450 A, 40.0 V, travel 600 mm/min, to take off 2.5 mm');
    expect(metric).toContain('Chance to reach the depth 97 %, not to go too deep 88 %');
    const [inch] = recutWords({ from_mm: 1000, to_mm: 3000, plan: { ...plan, says: [] } }, 'inch');
    expect(inch).toContain('travel 23.6 in/min, to take off 0.098 in');
  });
});
