import fc from 'fast-check';
import { expect, it } from 'vitest';
import { hardnessBand, QUENCH_TIME } from './hardness-band.ts';
import { hardnessByFormulas, martensiteHardness } from './hardness-formulas.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const SEED = { seed: 20240705, numRuns: 300 };
const steel = fc.record({
  C: range(0.08, 0.2),
  Si: range(0.1, 0.5),
  Mn: range(0.8, 1.6),
  Cr: range(0, 0.3),
  Ni: range(0, 0.3),
});

it('no formula gets harder with slower cooling', () => {
  fc.assert(
    fc.property(steel, range(2, 30), range(1.05, 2), (composition, time, factor) => {
      const quick = hardnessByFormulas(composition, time);
      hardnessByFormulas(composition, time * factor).forEach(({ hardness }, index) => {
        expect(hardness).toBeLessThanOrEqual(quick[index]!.hardness + 1e-9);
      });
    }),
    SEED,
  );
});

it('the band holds every formula at both ends and all between, and the martensite where it quenches', () => {
  fc.assert(
    fc.property(
      steel,
      range(0.3, 20),
      range(1, 3),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (composition, quickest, factor, part) => {
        const slowest = quickest * factor;
        const band = hardnessBand(composition, quickest, slowest);
        const between = quickest * (slowest / quickest) ** part;
        for (const { hardness } of hardnessByFormulas(composition, between)) {
          expect(hardness).toBeGreaterThan(band.least);
          expect(hardness).toBeLessThan(band.most);
        }
        if (quickest < QUENCH_TIME)
          expect(band.most).toBeGreaterThanOrEqual(martensiteHardness(composition.C));
      },
    ),
    SEED,
  );
});
