import { expect, it } from 'vitest';
import { preheatHydrogenControl } from './preheat-hydrogen-control.ts';
import { preheatMethodB } from './preheat-method-b.ts';

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
