import fc from 'fast-check';
import { expect, it } from 'vitest';
import { preheatHydrogenControl } from './preheat-hydrogen-control.ts';
import { type PreheatInput, preheatMethodB } from './preheat-method-b.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const input: fc.Arbitrary<PreheatInput> = fc.record({
  composition: fc.record({ C: range(0.05, 0.3), Mn: range(0.5, 1.6), Cr: range(0, 1), Mo: range(0, 0.5) }),
  thickness: range(0.01, 0.09),
  hydrogen: range(1, 20),
  heatInput: range(0.5e6, 4e6),
});
const rise = range(1.001, 1.5);
const SEED = { seed: 20240703, numRuns: 500 };

it('method B asks for more with more carbon, thickness or hydrogen, and for less with more heat', () => {
  fc.assert(
    fc.property(input, rise, (each, factor) => {
      const { temperature } = preheatMethodB(each);
      const of = (change: Partial<PreheatInput>): number =>
        preheatMethodB({ ...each, ...change }).temperature;
      const richer = { ...each.composition, C: each.composition.C! * factor };
      expect(of({ composition: richer })).toBeGreaterThan(temperature);
      expect(of({ thickness: each.thickness * factor })).toBeGreaterThan(temperature);
      expect(of({ hydrogen: each.hydrogen * factor })).toBeGreaterThan(temperature);
      expect(of({ heatInput: each.heatInput * factor })).toBeLessThan(temperature);
    }),
    SEED,
  );
});

it('hydrogen control never asks for less with more carbon, thickness, hydrogen or restraint', () => {
  const restraints = ['low', 'medium', 'high'] as const;
  fc.assert(
    fc.property(
      range(0.05, 0.37),
      range(0.004, 0.12),
      range(0.5, 25),
      rise,
      (carbon, thickness, hydrogen, factor) => {
        restraints.forEach((restraint, index) => {
          const of = (c: number, h: number, d: number): number =>
            preheatHydrogenControl({ C: c }, h, d, restraint).temperature ?? Number.POSITIVE_INFINITY;
          const now = of(carbon, hydrogen, thickness);
          expect(of(carbon * factor, hydrogen, thickness)).toBeGreaterThanOrEqual(now);
          expect(of(carbon, hydrogen * factor, thickness)).toBeGreaterThanOrEqual(now);
          expect(of(carbon, hydrogen, thickness * factor)).toBeGreaterThanOrEqual(now);
          const freer = restraints[index - 1];
          if (freer === undefined) return;
          expect(
            preheatHydrogenControl({ C: carbon }, hydrogen, thickness, freer).temperature,
          ).toBeLessThanOrEqual(now);
        });
      },
    ),
    SEED,
  );
});
