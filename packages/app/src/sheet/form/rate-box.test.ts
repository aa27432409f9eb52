import { expect, it } from 'vitest';
import { jobFieldAt, kitFieldAt } from '../document/index.ts';
import { rateBox } from './rate-box.ts';

it.each([
  ['after.cleaning_min_per_m', '3', '0.914', '3 min per m'],
  ['reweld.heat_input_kJ_per_mm', '1.5', '38.1', '1.5 kJ/mm'],
  ['after.skin_grinding_cm3_per_min', '3', '0.183', '3 cm3 per min'],
  ['after.refill.deposition_kg_per_h', '2', '4.41', '2 kg per h'],
  ['after.alternatives.grinding.groove_m_per_h', '1', '3.28', '1 m per h'],
  ['after.refill.filler_per_kg', '10', '4.54', '10 per kg'],
  ['after.refill.filler_per_kg', '0', '0', undefined],
  ['after.cleaning_min_per_m', 'three', 'three', undefined],
  ['after.cleaning_min_per_m', '', '', undefined],
])('%s of %s is %s to a reader in inches', (path, stated, shown, inFile) => {
  const box = rateBox(jobFieldAt(path)!, 'inch')!;
  expect(box.shown(stated)).toBe(shown);
  expect(box.inFile(stated)).toBe(inFile);
});

it.each([
  ['leads.*.resistance_mohm_per_m', '0.2', '0.061', '0.2 mohm per m'],
  ['air.path.*.droop_kPa_per_100_L_per_min', '2', '8.21', '2 kPa per 100 L/min'],
])('%s of a kit of %s is %s to a reader in inches', (path, stated, shown, inFile) => {
  const box = rateBox(kitFieldAt(path)!, 'inch')!;
  expect(box.shown(stated)).toBe(shown);
  expect(box.inFile(stated)).toBe(inFile);
});

it('turns what was typed into the unit of the file', () => {
  const box = rateBox(jobFieldAt('reweld.heat_input_kJ_per_mm')!, 'inch')!;
  expect(box.stated(38.1)).toBe(1.5);
  expect(box.shown(String(box.stated(45)))).toBe('45');
});

it.each(['reweld.hydrogen_mL_per_100g', 'rates.labour_per_hour', 'plate.thickness'])(
  'leaves %s as the file has it',
  (path) => {
    expect(rateBox(jobFieldAt(path)!, 'inch')).toBeUndefined();
  },
);

it('leaves what is stated in the reader’s own unit as it is', () => {
  expect(rateBox(jobFieldAt('after.cleaning_min_per_m')!, 'metric')).toBeUndefined();
});
