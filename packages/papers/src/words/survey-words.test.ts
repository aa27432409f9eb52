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

  test('tells the engineer of a stretch too deep how much plate is left, and the preheat beside that of the seam', () => {
    const plan = {
      kind: 'weld',
      over_mm: 2,
      weld_metal_kg: 0.12,
      weld_metal_band_kg: { p05: 0.08, p50: 0.12, p95: 0.16 },
      plate_left_mm: { p05: 11, p50: 12, p95: 13 },
      preheat_planned_degC: 60,
      preheat_plate_left_degC: 40,
      preheat_held_fast_degC: 150,
      preheat_asked_degC: 150,
      preheat_added_K: 90,
      says: [],
    } as const;
    const told = (units: 'metric' | 'inch'): string =>
      recutWords({ from_mm: 1000, to_mm: 3000, plan: { ...plan, says: [] } }, units).join(' ');
    expect(told('metric')).toContain('0.12 kg of weld metal added');
    expect(told('metric')).toContain('12.0 mm (90 %: 11.0 mm to 13.0 mm) of plate is left');
    expect(told('metric')).toContain('Preheat for a weld back: 150 °C, 90 °C more than the seam’s 60 °C');
    expect(told('metric')).toContain('The plate left alone would ask for 40 °C');
    expect(told('inch')).toContain('0.26 lb of weld metal added');
    expect(told('inch')).toContain('Preheat for a weld back: 302 °F, 162 °F more than the seam’s 140 °F');
    const { preheat_asked_degC: _asked, preheat_held_fast_degC: _held, ...unknown } = plan;
    expect(recutWords({ from_mm: 1000, to_mm: 3000, plan: { ...unknown, says: [] } }, 'metric')[2]).toContain(
      'cannot be told',
    );
  });
});
