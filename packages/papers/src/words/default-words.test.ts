import { jobFields } from '@furrow/engine';
import { expect, test } from 'vitest';
import { defaultText, defaultTitle } from './default-words.ts';

test.each([
  ['site.fire.ahead', '75 ft', 'metric', '22.86 m'],
  ['site.fire.ahead', '75 ft', 'inch', '75 ft'],
  ['kit.electrodes[2].stub', '75 mm', 'inch', '3 in'],
  ['groove.floor_width', '0 mm', 'inch', '0 in'],
  ['heat.losses', 'film_and_radiation', 'inch', 'film and radiation'],
  ['plan.tracks_most', 8, 'metric', '8'],
  ['after.cleaning_min_per_m', 3, 'metric', '3'],
  ['after.cleaning_min_per_m', 3, 'inch', '0.91'],
  ['after.skin_grinding_cm3_per_min', 3, 'inch', '0.18'],
  ['reweld.heat_input_kJ_per_mm', 1.5, 'inch', '38'],
  ['kit.electrodes[0].price_each', 0, 'inch', 'no price'],
  ['no.such.field', '75 mm', 'inch', '75 mm'],
] as const)('%s taken as %s is told in %s units', (path, value, units, told) => {
  expect(defaultText({ path, value }, jobFields(), units)).toBe(told);
});

test.each([
  ['after.cleaning_min_per_m', 'inch', 'Cleaning, min per ft'],
  ['after.cleaning_min_per_m', 'metric', 'Cleaning, min per m'],
  ['reweld.heat_input_kJ_per_mm', 'inch', 'Heat input in kJ/in'],
  ['site.fire.ahead', 'inch', 'Zone ahead'],
  ['no.such.field', 'inch', 'no.such.field'],
] as const)('the title of %s in %s units is %s', (path, units, title) => {
  expect(defaultTitle(path, jobFields(), units)).toBe(title);
});
