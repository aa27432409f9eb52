import { jobFields } from '@furrow/engine';
import { expect, test } from 'vitest';
import { defaultText } from './default-words.ts';

test.each([
  ['site.fire.ahead', '75 ft', 'metric', '22.86 m'],
  ['site.fire.ahead', '75 ft', 'inch', '75 ft'],
  ['kit.electrodes[2].stub', '75 mm', 'inch', '3 in'],
  ['groove.floor_width', '0 mm', 'inch', '0 in'],
  ['heat.losses', 'film_and_radiation', 'inch', 'film and radiation'],
  ['plan.tracks_most', 8, 'metric', '8'],
  ['no.such.field', '75 mm', 'inch', '75 mm'],
] as const)('%s taken as %s is told in %s units', (path, value, units, told) => {
  expect(defaultText({ path, value }, jobFields(), units)).toBe(told);
});
