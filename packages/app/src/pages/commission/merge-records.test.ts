import { describe, expect, it } from 'vitest';
import { mergeRecords, sameRecord } from './merge-records.ts';
import type { RigRecord } from './rig-record.ts';

const read = (text: string) => ({ text, value: null, note: '' });
const record = (change: Partial<RigRecord>): RigRecord => ({
  readings: {},
  ticks: {},
  findings: {},
  ...change,
});

describe('mergeRecords', () => {
  const base = record({ readings: { a: read('1 V'), b: read('2 V') }, ticks: { x: true } });

  it('takes from each what only that one changed, what was taken away too', () => {
    const mine = { ...base, readings: { a: read('9 V'), b: read('2 V') } };
    const theirs = record({ readings: { a: read('1 V'), b: read('2 V'), c: read('3 V') } });
    const merged = mergeRecords(base, mine, theirs);
    expect(merged.clashes).toEqual([]);
    expect(merged.content).toEqual(
      record({ readings: { a: read('9 V'), b: read('2 V'), c: read('3 V') }, ticks: {} }),
    );
  });

  it('keeps mine where both changed an entry, and names it', () => {
    const mine = record({ ...base, readings: { a: read('8 V'), b: read('7 V') } });
    const theirs = record({ ...base, readings: { a: read('9 V'), b: read('7 V') } });
    const merged = mergeRecords(base, mine, theirs);
    expect(merged.clashes).toEqual(['a']);
    expect(merged.content.readings['a']).toEqual(read('8 V'));
  });

  it('names an entry that one took away and the other changed', () => {
    const merged = mergeRecords(
      base,
      record({ ...base, readings: { b: read('2 V') } }),
      record({ ...base, readings: { a: read('5 V'), b: read('2 V') } }),
    );
    expect(merged.clashes).toEqual(['a']);
    expect(merged.content.readings['a']).toBeUndefined();
  });
});

describe('sameRecord', () => {
  it('tells records apart by what they hold, not by the order of it', () => {
    expect(sameRecord(record({ ticks: { x: true, y: true } }), record({ ticks: { y: true, x: true } }))).toBe(
      true,
    );
    expect(sameRecord(record({ ticks: { x: true } }), record({}))).toBe(false);
    const noted = { ...read('1 V'), note: 'hot' };
    expect(sameRecord(record({ readings: { a: noted } }), record({ readings: { a: read('1 V') } }))).toBe(
      false,
    );
  });
});
