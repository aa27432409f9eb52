import { expect, it } from 'vitest';
import { formatAmount } from './format-amount.ts';
import { formatStated } from './format-stated.ts';
import { inUnit, kindOfUnit } from './stated-unit.ts';

it.each([
  [10.668, 'm', 'metric', '10.67 m'],
  [10.668, 'm', 'inch', '35 ft'],
  [60, 'm', 'inch', '196 ft 10 in'],
  [0.4, 'm', 'inch', '15 3/4 in'],
  [283.168, 'm3', 'metric', '283 m3'],
  [283.168, 'm3', 'inch', '10000 ft3'],
  [206.8427188, 'kPa', 'inch', '30 psi'],
  [60, 'min', 'metric', '1 h'],
  [55, 'degC', 'inch', '131 °F'],
  [2558.05, '%', 'metric', '2558 %'],
  [0.5, 'mT', 'inch', '0.5 mT'],
  [11, '-', 'metric', '11'],
  [11, 'shade', 'metric', 'shade 11'],
  [null, 'dBA', 'metric', '–'],
  [Number.NaN, 'm', 'metric', '–'],
] as const)('%s %s is shown in %s units as %s', (value, unit, system, text) => {
  expect(formatStated(value, unit, system)).toBe(text);
});

it('reads as the SI amount does, in both unit systems, for every unit that has a kind', () => {
  for (const unit of [
    'mm',
    'm',
    'mm/min',
    'kPa',
    'bar',
    'L/min',
    'degC',
    'kW',
    'W',
    'mV',
    'kJ/mm',
    'kg',
    's',
    'min',
    'h',
  ] as const)
    for (const system of ['inch', 'metric'] as const)
      expect(formatStated(inUnit(300, unit), unit, system)).toBe(
        formatAmount(300, kindOfUnit(unit)!, system),
      );
});
