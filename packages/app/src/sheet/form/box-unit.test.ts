import { parseAmount, type UnitSystem } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { jobFieldAt } from '../document/index.ts';
import { boxUnit, isBareNumber } from './box-unit.ts';
import { typedValue } from './typed-value.ts';

const field = (path: string) => jobFieldAt(path)!;
const typed = (path: string, text: string, system: UnitSystem) =>
  typedValue(field(path), text, boxUnit(field(path), system));

describe('a number typed without a unit', () => {
  it('takes the unit of a box that can only be meant in one', () => {
    expect(typed('kit.arc_voltage.set', '42', 'inch')).toBe('42 V');
    expect(typed('kit.current.most', ' 1200 ', 'metric')).toBe('1200 A');
    expect(typed('groove.depth.wanted', '3/8', 'inch')).toBe('3/8 in');
    expect(typed('plate.thickness', '1 1/4', 'inch')).toBe('1 1/4 in');
    expect(typed('plate.thickness', '32', 'metric')).toBe('32 mm');
    expect(typed('plate.thickness', '9,5', 'metric')).toBe('9,5 mm');
    expect(typed('heat.back_face_most', '750', 'inch')).toBe('750 °F');
    expect(typed('groove.assurance', '95', 'metric')).toBe('95 %');
  });

  it('is left to the reader of the file where it could be meant in several units, or in two ways', () => {
    expect(typed('seam.length', '20', 'inch')).toBe('20');
    expect(typed('kit.loss_window', '4', 'metric')).toBe('4');
    expect(typed('kit.current.most', '1,200', 'metric')).toBe('1,200');
    expect(typed('groove.assurance', '0.95', 'metric')).toBe('0.95');
  });

  it('is not touched where it has a unit, or is none', () => {
    expect(typed('plate.thickness', '32 mm', 'inch')).toBe('32 mm');
    expect(typed('plate.thickness', 'thick', 'inch')).toBe('thick');
    expect([isBareNumber('3-1/2'), isBareNumber('3/8"'), isBareNumber('')]).toEqual([true, false, false]);
  });

  it('reads as what the box shows, whatever is typed', () => {
    for (const text of ['1/2', '3 1/2', '3-1/2', '12', '0.5', '7,25']) {
      expect(parseAmount(String(typed('plate.thickness', text, 'inch')), 'length').ok, text).toBe(true);
    }
  });
});
