import fc from 'fast-check';
import { it } from 'vitest';
import { steelFamilyOf } from './steel-family.ts';

it('answers or refuses any composition, and never takes an impossible one', () => {
  const percent = fc.option(fc.double({ min: -5, max: 105 }), { nil: undefined });
  const keys = ['C', 'Mn', 'Si', 'Cr', 'Mo', 'V', 'Ni', 'Cu', 'Nb', 'Ti', 'B', 'N'] as const;
  fc.assert(
    fc.property(fc.tuple(...keys.map(() => percent)), (contents) => {
      const outcome = steelFamilyOf(Object.fromEntries(keys.map((key, i) => [key, contents[i]])));
      const given = contents.map((content) => content ?? 0);
      const possible = given.every((content) => content >= 0) && given.reduce((a, b) => a + b, 0) <= 100;
      return possible || !outcome.ok;
    }),
    { seed: 20240611, numRuns: 2000 },
  );
});
