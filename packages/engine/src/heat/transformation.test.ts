import { expect, it } from 'vitest';
import { transformationOf } from './transformation.ts';

it('puts the end of ferrite above the start of austenite, and lower with more carbon', () => {
  const low = transformationOf('carbon_steel', { C: 0.1, Mn: 1 })!;
  const high = transformationOf('carbon_steel', { C: 0.4, Mn: 1 })!;
  expect(low.ac3).toBeGreaterThan(low.ac1);
  expect(high.ac3).toBeLessThan(low.ac3);
  expect(high.ac1).toBe(low.ac1);
});

it('keeps them in order where the formula would not', () => {
  const { ac1, ac3 } = transformationOf('carbon_steel', { C: 1.2, Mn: 0.5 })!;
  expect(ac3).toBe(ac1);
});

it.each([undefined, {}, { Mn: 1.4 }])('does without a carbon content: %o', (composition) => {
  expect(transformationOf('carbon_steel', composition)!.source.text).toContain('composition unknown');
});

it.each(['austenitic_stainless', 'manganese_steel', 'nickel_alloy', 'copper_alloy', 'cast_iron'] as const)(
  'has none for %s',
  (family) => {
    expect(transformationOf(family, { C: 0.1 })).toBeNull();
  },
);
