import { expect, it } from 'vitest';
import { exactAmount } from './exact-amount.ts';
import type { QuantityKind, UnitSystem } from './quantity-kind.ts';

it.each<[number, QuantityKind, UnitSystem, string]>([
  [0.0095, 'length', 'metric', '9.5 mm'],
  [0.009525, 'length', 'inch', '0.375 in'],
  [0.71 / 60, 'speed', 'metric', '710 mm/min'],
  [90 * 6894.757293168361, 'pressure', 'inch', '90 psi'],
  [Math.PI / 3, 'angle', 'metric', '60 deg'],
  [293.15, 'temperature', 'inch', '68 °F'],
  [0.95, 'share', 'metric', '95 %'],
  [1e-12, 'length', 'metric', '1e-9 mm'],
])('exactAmount(%s, %s, %s) is "%s"', (value, kind, system, text) => {
  expect(exactAmount(value, kind, system)).toBe(text);
});

it('treats a value that is no number as a bug', () => {
  expect(() => exactAmount(Number.POSITIVE_INFINITY, 'length', 'metric')).toThrow(RangeError);
});
