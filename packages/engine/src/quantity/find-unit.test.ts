import { expect, it } from 'vitest';
import { findUnit, nearestUnit, unitNamed, unitsOf } from './find-unit.ts';
import { QUANTITY_KINDS } from './quantity-kind.ts';
import { UNIT_FAMILIES } from './unit-table.ts';

it('gives no spelling to two units', () => {
  const spellings = QUANTITY_KINDS.flatMap((kind) =>
    UNIT_FAMILIES[kind].units.flatMap((unit) => [unit.name, ...unit.also]),
  );
  expect(new Set(spellings).size).toBe(spellings.length);
});

it('scales every unit up and down to the same number', () => {
  for (const kind of QUANTITY_KINDS) {
    for (const { name } of UNIT_FAMILIES[kind].units) {
      const { scale } = unitNamed(name);
      expect(scale.fromSi(scale.toSi(12.5))).toBeCloseTo(12.5, 11);
    }
  }
});

it('reads other letter cases only where they cannot mislead', () => {
  expect(findUnit('PSI')?.name).toBe('psi');
  expect(findUnit('MM/MIN')?.name).toBe('mm/min');
  expect(findUnit('MV')).toBeUndefined();
  expect(findUnit('mpa')).toBeUndefined();
  expect(findUnit('Mm')).toBeUndefined();
});

it('offers a near spelling of the same kind, and none when nothing is near', () => {
  expect(nearestUnit('mn', 'length')).toBe('mm');
  expect(nearestUnit('brr', 'pressure')).toBe('bar');
  expect(nearestUnit('fathoms-deep', 'length')).toBeUndefined();
});

it('lists the wire gauge among areas', () => {
  expect(unitsOf('area')).toContain('AWG');
});
