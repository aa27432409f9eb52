import { expect, it } from 'vitest';
import { jobFieldAt } from '../document/index.ts';
import { readAsText } from './read-as.ts';

it.each([
  // a fraction of a tape where it is what was written, the figures of a gauge where the nearest is another size
  ['groove.depth.wanted', '12 mm', '0.472 in'],
  ['groove.depth.wanted', '9.5 mm', '3/8 in'],
  ['groove.depth.plus', '6 mm', '0.236 in'],
  ['plate.thickness', '32 mm', '1.26 in'],
  ['seam.length', '6 m', '19 ft 8 in'],
  ['heat.ambient', '20 °C', '68 °F'],
  ['groove.depth.wanted', '3/8 in', undefined],
  ['groove.depth.wanted', 'deep', undefined],
  ['groove.purpose', '12 mm', undefined],
  ['groove.depth.wanted', undefined, undefined],
] as const)('%s, written %s, is read as %s in inches', (path, written, text) => {
  expect(readAsText(jobFieldAt(path)!, written, 'inch')).toBe(text);
});

it('reads a fraction of an inch in millimetres', () => {
  expect(readAsText(jobFieldAt('groove.depth.wanted')!, '3/8 in', 'metric')).toBe('9.5 mm');
});
