import type { GaugeRow, Plan } from '@furrow/engine';
import { expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import { actionText, readingText, riskTexts, tryoutText } from './gauge-words.ts';

const plan = samplePlan(exampleJob('penstock-seam'), { tracks: 1, layers: 2, gauge: true });
const row = (part: Partial<GaugeRow>): GaugeRow => ({ ...plan.gauge_stops[0]!.table[1]!, ...part });

test('a row says for which readings it is, from the first to the last', () => {
  expect(readingText(row({ reading_from_mm: 0, reading_to_mm: 3.8 }), 'metric')).toBe('below 3.8');
  expect(readingText(row({ reading_from_mm: 3.8, reading_to_mm: 5 }), 'inch')).toBe('0.150 to 0.196');
  expect(readingText(row({ reading_from_mm: 9, reading_to_mm: null }), 'metric')).toBe('9.0 and deeper');
});

test('a row says what to do', () => {
  expect(actionText(row({ action: 'run', travel_mm_per_min: 889 }), 'inch')).toBe('travel 35 in/min');
  const short = row({ action: 'run', travel_mm_per_min: 2540, in_band: true });
  expect(actionText(short, 'inch')).toBe('travel 100 in/min, low in places');
  expect(actionText({ ...short, in_band: false }, 'inch')).toBe('travel 100 in/min');
  expect(actionText(row({ action: 'done', travel_mm_per_min: null }), 'metric')).toBe('run no more passes');
  const asks = row({ action: 'ask', reason: null, travel_mm_per_min: null });
  expect(actionText(asks, 'metric')).toBe('stop, ask the welding engineer');
  expect(actionText({ ...asks, reason: 'too_deep' }, 'metric')).toBe(
    'stop, ask the welding engineer: too deep in places',
  );
});

test('a trial is told as a length that a tape finds, no shorter than it is', () => {
  const trial = { length_mm: 300, current_A: 900, travel_mm_per_min: 1270, on: 'scrap' } as Plan['trial'];
  const told = (length_mm: number, units: 'inch' | 'metric'): string =>
    tryoutText({ trial: { ...trial!, length_mm } }, units)!;
  expect(told(300, 'inch')).toContain('a trial of 12 in on scrap of the same metal at 900 A and 50 in/min');
  expect(told(304.8, 'inch')).toContain('a trial of 12 in on');
  expect(told(306, 'inch')).toContain('a trial of 13 in on');
  expect(told(300, 'metric')).toContain('a trial of 300 mm on');
});

test('a reading at an edge stands in one row alone', () => {
  expect(readingText(row({ reading_from_mm: 5, reading_to_mm: 6 }), 'metric')).toBe('5.0 to 5.9');
  expect(readingText(row({ reading_from_mm: 6, reading_to_mm: 6.1 }), 'metric')).toBe('6.0');
});

test('chances of a row are rounded to the side of more risk', () => {
  expect(riskTexts({ depth_reached: 0.281, not_too_deep: 0.9999 })).toEqual(['72', '0.1']);
  expect(riskTexts({ depth_reached: 0.9951, not_too_deep: 1 })).toEqual(['0.5', '0.1']);
  expect(riskTexts({ depth_reached: 0.99, not_too_deep: Number.NaN })).toEqual(['1', 'unknown']);
});
