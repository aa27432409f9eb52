import { describe, expect, it } from 'vitest';
import { preheatHydrogenControl } from './preheat-hydrogen-control.ts';
import { preheatMethodB } from './preheat-method-b.ts';
import { repairPreheat } from './repair-preheat.ts';

const INSIDE = { composition: { C: 0.16, Mn: 1.4 }, thickness: 0.03, hydrogen: 5, heatInput: 1.5e6 };

it('says nothing inside the ranges of method B', () => {
  expect(preheatMethodB(INSIDE).outside).toEqual([]);
});

it.each([
  ['thickness', { thickness: 0.12 }, 'the thickness 120 mm is not within 10 to 90 mm'],
  ['hydrogen', { hydrogen: 25 }, 'the hydrogen 25 mL/100 g is not within 1 to 20 mL/100 g'],
  ['heat input', { heatInput: 5e6 }, 'the heat input 5 kJ/mm is not within 0.5 to 4 kJ/mm'],
  ['carbon equivalent', { composition: { C: 0.1, Mn: 0.6 } }, 'CET 0.16 % is not within 0.2 to 0.5 %'],
  ['an element', { composition: { C: 0.16, Mn: 1.4, V: 0.3 } }, 'V 0.3 % is not within 0 to 0.18 %'],
])('names what is outside: %s', (_, change, told) => {
  expect(preheatMethodB({ ...INSIDE, ...change }).outside).toEqual([told]);
});

it('has no group for a steel beyond the last column', () => {
  expect(preheatHydrogenControl({ C: 0.4 }, 5, 0.03, 'low')).toMatchObject({
    group: null,
    temperature: null,
  });
});

it('tells a plate that needs no heating apart from one that is asked to be at 65 degF', () => {
  expect(preheatHydrogenControl({ C: 0.17 }, 5, 0.03, 'low').none).toBe(true);
  const warm = preheatHydrogenControl({ C: 0.17 }, 5, 0.05, 'low');
  expect(warm.none).toBe(false);
  expect(warm.temperature).toBeCloseTo(291.48, 2);
});

describe('a mend of a groove', () => {
  const plate = { material: 'carbon_steel', thickness: 0.03, composition: { C: 0.16, Mn: 1.4 } };
  const reweld = { hydrogen_mL_per_100g: 5, heat_input_kJ_per_mm: 1.5, restraint: 'low' };
  const of = (change: object, left = 0.01) =>
    repairPreheat(
      {
        plate: { ...plate, ...change },
        reweld,
        heat: { ambient: 293.15, ...change },
      } as unknown as Parameters<typeof repairPreheat>[0],
      left,
    );

  it('is asked for no less than the plate as it is, however thin what is left', () => {
    const told = of({});
    const whole = preheatMethodB({ ...INSIDE, thickness: 0.03 }).temperature;
    expect(told.planned).toBeCloseTo(whole, 9);
    expect(told.plateLeft).toBe(293.15);
    expect(of({}, 0.028).plateLeft).toBeCloseTo(
      preheatMethodB({ ...INSIDE, thickness: 0.028 }).temperature,
      9,
    );
    expect(told.asked).toBeGreaterThanOrEqual(whole);
  });

  it('is held fast, whatever the restraint of the seam', () => {
    const high = preheatHydrogenControl(plate.composition, 5, 0.03, 'high').temperature!;
    expect(high).toBeGreaterThan(preheatHydrogenControl(plate.composition, 5, 0.03, 'low').temperature!);
    expect(of({}).heldFast).toBe(high);
    expect(of({}).asked).toBe(Math.max(high, of({}).planned));
  });

  it('is never below what the job states, and is not told of a metal or plate that the methods do not cover', () => {
    expect(of({ preheat: 473.15 })).toMatchObject({ planned: 473.15, asked: 473.15 });
    expect(of({ material: 'nickel_alloy' })).toEqual({ planned: 293.15 });
    expect(of({ composition: { Mn: 1.4 } })).toEqual({ planned: 293.15 });
    expect(of({ composition: { C: 0.4, Mn: 1 } }).heldFast).toBeUndefined();
  });
});
