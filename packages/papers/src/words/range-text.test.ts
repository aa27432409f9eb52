import { describe, expect, it } from 'vitest';
import { rangeText } from './range-text.ts';

describe('bands of the heat', () => {
  it('give the unit once and the lower end first', () => {
    expect(rangeText({ least: 120, most: 180 }, 'degC', 'metric')).toBe('120 to 180 °C');
    expect(rangeText({ least: 8, most: 3 }, 's', 'metric')).toBe('3.0 to 8.0 s');
    expect(rangeText({ least: 0.62, most: 1.54 }, 'kJ/mm', 'inch')).toBe('15.7 to 39.1 kJ/in');
  });

  it('are one value where both ends read the same', () => {
    expect(rangeText({ least: 20.1, most: 20.3 }, 'degC', 'metric')).toBe('20 °C');
    expect(rangeText({ least: 1, most: 1.001 }, 'kJ/mm', 'metric')).toBe('1.00 kJ/mm');
  });
});
