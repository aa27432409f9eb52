import { expect, test } from 'vitest';
import { boundUnits } from './bound-units.ts';

test.each([
  ['a reading, 0.4 mm. Between', 'a reading, 0.4\u00a0mm. Between'],
  ['1 1/4 in deep', '1\u00a01/4\u00a0in deep'],
  ['28 in/min, 90 psi', '28\u00a0in/min, 90\u00a0psi'],
  ['95 in 100', '95\u00a0in 100'],
  ['pass 3 then 4 more', 'pass 3 then 4 more'],
  ['5 minutes', '5 minutes'],
  ['20 °C to 30 %', '20\u00a0°C to 30\u00a0%'],
])('%s', (text, bound) => {
  expect(boundUnits(text)).toBe(bound);
});
