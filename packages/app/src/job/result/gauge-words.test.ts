import type { GaugeRow } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { actionText, readingText } from './gauge-words.ts';

const ROW: GaugeRow = {
  from_mm: 6,
  to_mm: 7.5,
  deepen_travel_mm_per_min: null,
  travel_factor: null,
  expect_mm: { p05: 12, p50: 13, p95: 14 },
  too_shallow: 0.03,
  too_deep: 0.02,
  reading_from_mm: 6,
  reading_to_mm: 7.5,
  action: 'run',
  travel_mm_per_min: 889,
  expected_depth_mm: { p05: 12, p50: 13, p95: 14 },
  depth_reached: 0.97,
  not_too_deep: 0.98,
};

describe('the words of a gauge table', () => {
  it('name the readings of a row', () => {
    expect(readingText(ROW, 'metric')).toBe('6.0 to 7.5 mm');
    expect(readingText({ ...ROW, reading_from_mm: 0 }, 'metric')).toBe('less than 7.5 mm');
    expect(readingText({ ...ROW, reading_to_mm: null }, 'inch')).toBe('0.24 in or more');
  });

  it('say what to do', () => {
    expect(actionText(ROW, 'inch')).toBe('run the next pass at 35 in/min');
    expect(actionText({ ...ROW, action: 'done', travel_mm_per_min: null }, 'metric')).toBe(
      'done: run no more passes',
    );
    expect(actionText({ ...ROW, action: 'ask', travel_mm_per_min: null }, 'metric')).toBe(
      'stop and ask the welding engineer',
    );
  });
});
