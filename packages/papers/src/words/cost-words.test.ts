import { describe, expect, it } from 'vitest';
import { difference, money, moneyRange, sharePercent, workTime } from './cost-words.ts';

describe('words of cost', () => {
  it('write money in three figures with its currency', () => {
    expect(money(1105.2, 'EUR')).toBe('1110 EUR');
    expect(money(37.22, 'EUR')).toBe('37.2 EUR');
    expect(money(0.3746, 'CHF')).toBe('0.37 CHF');
    expect(money(0, '¤')).toBe('0 ¤');
    expect(moneyRange(1105.2, 1311, 'EUR')).toBe('1110 to 1310 EUR');
  });

  it('write a time to the minute from ten minutes on', () => {
    expect(workTime(52_572)).toBe('14 h 36 min');
    expect(workTime(2964)).toBe('49 min');
    expect(workTime(257)).toBe('4 min 17 s');
  });

  it('write a share so that little is not nothing', () => {
    expect([0, 0.0004, 0.663, 1].map(sharePercent)).toEqual(['0 %', '< 1 %', '66 %', '100 %']);
  });

  it('write a difference with its sign, and none where there is none', () => {
    const euro = (amount: number): string => money(amount, 'EUR');
    expect(difference(-44.2, euro)).toBe('−44.2 EUR');
    expect(difference(27.3, euro)).toBe('+27.3 EUR');
    expect(difference(0, euro)).toBe('none');
    expect(difference(1e-9, euro)).toBe('none');
  });
});
