import { describe, expect, it } from 'vitest';
import { commissioningSaveSchema, commissioningSchema } from './commissioning-schema.ts';

const reading = { text: '72 V', value: 72, note: '' };
const save = { readings: { open_circuit: reading }, ticks: ['power-1'], findings: [], based_on: 0 };
const takes = (part: object): boolean => commissioningSaveSchema.safeParse({ ...save, ...part }).success;
const many = <Value>(count: number, value: Value): Record<string, Value> =>
  Object.fromEntries(Array.from({ length: count }, (_, number) => [`check-${number}`, value]));

describe('commissioningSaveSchema', () => {
  it('takes what a rig has, and gives the times to nobody but the server', () => {
    expect(commissioningSaveSchema.parse(save)).toEqual(save);
    const timed = { ...save, readings: { open_circuit: { ...reading, at: '2026-01-05T06:00:00.000Z' } } };
    expect(commissioningSaveSchema.parse(timed)).toEqual(save);
  });

  it('takes as many entries as a rig can have, and no more', () => {
    expect(takes({ readings: many(500, reading) })).toBe(true);
    expect(takes({ readings: many(501, reading) })).toBe(false);
    expect(takes({ ticks: Object.keys(many(501, '')) })).toBe(false);
  });

  it('takes names and words within what can be kept', () => {
    expect(takes({ readings: { ['x'.repeat(120)]: reading } })).toBe(true);
    expect(takes({ readings: { ['x'.repeat(121)]: reading } })).toBe(false);
    expect(takes({ readings: { 'a\0': reading } })).toBe(false);
    expect(takes({ readings: { a: { ...reading, text: 'x'.repeat(201) } } })).toBe(false);
    expect(takes({ readings: { a: { ...reading, value: Number.NaN } } })).toBe(false);
  });
});

describe('commissioningSchema', () => {
  it('describes what is kept: every entry with its time', () => {
    const at = '2026-01-05T06:00:00.000Z';
    const kept = {
      job_id: '00000000-0000-4000-8000-000000000001',
      revision_number: 1,
      saved_at: at,
      readings: { open_circuit: { ...reading, at } },
      ticks: { 'power-1': at },
      findings: [],
    };
    expect(commissioningSchema.parse(kept)).toEqual(kept);
    expect(commissioningSchema.safeParse({ ...kept, ticks: { 'power-1': true } }).success).toBe(false);
  });
});
