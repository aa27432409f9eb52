import { expect, it } from 'vitest';
import { jobFieldAt } from '../document/index.ts';
import { shownRate } from './shown-rate.ts';

it.each([
  ['after.cleaning_min_per_m', '3', '0.914 min per ft'],
  ['reweld.heat_input_kJ_per_mm', '1.5', '38.1 kJ/in'],
  ['after.skin_grinding_cm3_per_min', '3', '0.183 in3 per min'],
  ['after.refill.deposition_kg_per_h', '2', '4.41 lb per h'],
  ['after.alternatives.grinding.groove_m_per_h', '1', '3.28 ft per h'],
  ['after.refill.filler_per_kg', '10', '4.54 per lb'],
  ['after.refill.filler_per_kg', '0', undefined],
  ['after.cleaning_min_per_m', 'three', undefined],
  ['after.cleaning_min_per_m', '', undefined],
  ['reweld.hydrogen_mL_per_100g', '5', undefined],
  ['rates.labour_per_hour', '60', undefined],
])('%s of %s is read as %s', (path, written, text) => {
  expect(shownRate(jobFieldAt(path)!, written, 'inch')).toBe(text);
});

it('leaves what is stated in the reader’s own unit as it is', () => {
  expect(shownRate(jobFieldAt('after.cleaning_min_per_m')!, '3', 'metric')).toBeUndefined();
});
