import fc from 'fast-check';
import { expect, it } from 'vitest';
import { nthLeast } from './nth-least.ts';

it('is what sorting the list has at that place, and leaves the list as it was', () => {
  const lists = fc.array(fc.double({ noNaN: true, min: -9, max: 9 }), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(lists, fc.nat(), (list, nat) => {
      const values = Float64Array.from(list);
      const place = nat % list.length;
      expect(nthLeast(values, place)).toBe(values.slice().sort()[place]);
      expect([...values]).toEqual(list);
    }),
    { seed: 65 },
  );
});
