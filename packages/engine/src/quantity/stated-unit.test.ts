import { expect, it } from 'vitest';
import { parseAmount } from './parse-amount.ts';
import type { QuantityKind } from './quantity-kind.ts';
import { type EdgeUnit, inUnit, kindOfUnit, type StatedUnit } from './stated-unit.ts';

it.each<[number, EdgeUnit, number]>([
  [0.0095, 'mm', 9.5],
  [0.71 / 60, 'mm_per_min', 710],
  [0.0001, 'mm3_per_mm', 100],
  [(60 * Math.PI) / 180, 'deg', 60],
  [90, 'min', 1.5],
  [1.2e6, 'kJ_per_mm', 1.2],
  [10.5e9, 'J_per_mm3', 10.5],
  [620000, 'bar', 6.2],
])('%s in SI is %s: %s', (si, unit, expected) => {
  expect(inUnit(si, unit)).toBeCloseTo(expected, 12);
});

it.each<StatedUnit>([
  ...(['mm', 'm', 'um', 'mm2', 'm3', 'L', 'mm/min', 'm/min', 'deg', 's', 'min', 'h', 'A', 'kA'] as const),
  ...(['V', 'mV', 'mohm', 'W', 'kW', 'kPa', 'bar', 'L/min', 'm3/min', 'degC', '%'] as const),
])('takes a %s for what a document that states one takes it for', (unit) => {
  const kinds: Partial<Record<StatedUnit, QuantityKind>> = {
    mm: 'length',
    um: 'length',
    m3: 'volume',
    'm3/min': 'air_flow',
    '%': 'share',
  };
  const kind = kinds[unit] ?? (kindOfUnit(unit) as QuantityKind);
  const read = parseAmount(`37 ${unit}`, kind);
  expect(read.ok && inUnit(read.value, unit)).toBeCloseTo(37, 9);
});
