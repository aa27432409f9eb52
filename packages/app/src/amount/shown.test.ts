import { describe, expect, it } from 'vitest';
import { figures, shown, shownBand, shownSize } from './shown.ts';

describe('shown', () => {
  it('writes amounts of results in the shop’s units', () => {
    expect(shown(12.04, 'mm', 'metric')).toBe('12.0 mm');
    expect(shown(12.04, 'mm', 'inch')).toBe('0.47 in');
    expect(shown(889, 'mm/min', 'inch')).toBe('35 in/min');
    expect(shown(850, 'A', 'inch')).toBe('850 A');
  });

  it('keeps a unit it has no other one for', () => {
    expect(shown(16.23, 'kW', 'metric')).toBe('16.2 kW');
    expect(shown(0.314, '', 'inch')).toBe('0.31');
  });

  it('writes no number where there is none', () => {
    expect(shown(Number.NaN, 'mm', 'metric')).toBe('–');
  });

  it('writes a band with one unit', () => {
    expect(shownBand(12.05, 15.62, 'mm', 'metric')).toBe('12.1 to 15.6 mm');
    expect(shownBand(12.05, 15.62, 'mm', 'inch')).toBe('0.47 to 0.61 in');
  });

  it('writes what is bought as it is sold', () => {
    expect(shownSize(12.7, 'inch')).toBe('1/2 in');
    expect(shownSize(12.7, 'metric')).toBe('12.7 mm');
  });

  it('gives no more figures than matter', () => {
    expect(figures(1_234_567)).toBe('1\u202f234\u202f567');
    expect(figures(0.004321)).toBe('0.0043');
    expect(figures(60)).toBe('60');
  });
});
