import { describe, expect, it } from 'vitest';
import { formatConductor } from './format-conductor.ts';
import { parseAmount } from './parse-amount.ts';

function area(text: string): number {
  const read = parseAmount(text, 'area');
  if (!read.ok) throw new Error(text);
  return read.value;
}

describe('the size of a conductor', () => {
  it('is named as the trade of either system names it', () => {
    expect(formatConductor(area('4/0 AWG'), 'inch')).toBe('4/0 AWG (107 mm²)');
    expect(formatConductor(area('2 AWG'), 'inch')).toBe('2 AWG (33.6 mm²)');
    expect(formatConductor(area('250 kcmil'), 'inch')).toBe('250 kcmil (127 mm²)');
    expect(formatConductor(area('120 mm2'), 'metric')).toBe('120 mm² (237 kcmil)');
    expect(formatConductor(area('95 mm2'), 'inch')).toBe('187 kcmil (95 mm²)');
  });

  it('names every gauge as it is read', () => {
    for (const name of ['4/0 AWG', '3/0 AWG', '2/0 AWG', '1/0 AWG', '1 AWG', '6 AWG', '10 AWG', '40 AWG'])
      expect(formatConductor(area(name), 'inch')).toContain(`${name} (`);
  });
});
