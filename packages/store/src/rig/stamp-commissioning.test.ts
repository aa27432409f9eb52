import { describe, expect, it } from 'vitest';
import type { CommissioningContent, CommissioningEntry } from './commissioning-store.ts';
import { stampCommissioning } from './stamp-commissioning.ts';

const early = '2026-01-05T06:00:00.000Z';
const late = '2026-01-05T07:00:00.000Z';
const none: CommissioningContent = { readings: {}, ticks: {}, findings: [] };
const entry: CommissioningEntry = {
  readings: { open_circuit: { text: '72 V', value: 72, note: '' } },
  ticks: ['power-1', 'air-1'],
  findings: [{ id: 'a', symptoms: { hot_joint: 'yes' }, cause: null, note: '' }],
};

describe('stampCommissioning', () => {
  it('gives what is new the time it comes in', () => {
    expect(stampCommissioning(none, entry, early)).toEqual({
      readings: { open_circuit: { text: '72 V', value: 72, note: '', at: early } },
      ticks: { 'power-1': early, 'air-1': early },
      findings: [{ id: 'a', symptoms: { hot_joint: 'yes' }, cause: null, note: '', at: early }],
    });
  });

  it('leaves what stands as it was with the time it has, in whatever order it comes', () => {
    const before = stampCommissioning(none, entry, early);
    const turned = { ...entry, ticks: entry.ticks.toReversed() };
    expect(stampCommissioning(before, turned, late)).toEqual(before);
  });

  it('gives a reading that was typed over, or noted upon, the time of that', () => {
    const before = stampCommissioning(none, entry, early);
    for (const change of [{ text: '71 V', value: 71 }, { note: 'second meter' }]) {
      const reading = { text: '72 V', value: 72, note: '', ...change };
      const after = stampCommissioning(before, { ...entry, readings: { open_circuit: reading } }, late);
      expect(after.readings).toEqual({ open_circuit: { ...reading, at: late } });
      expect(after.ticks).toEqual(before.ticks);
    }
  });

  it('gives a fault whose cause was found the time of that', () => {
    const before = stampCommissioning(none, entry, early);
    const findings = entry.findings.map((finding) => ({ ...finding, cause: 'loose_joint' }));
    expect(stampCommissioning(before, { ...entry, findings }, late).findings).toMatchObject([{ at: late }]);
  });

  it('drops what is left out', () => {
    const before = stampCommissioning(none, entry, early);
    expect(stampCommissioning(before, { readings: {}, ticks: ['air-1'], findings: [] }, late)).toEqual({
      readings: {},
      ticks: { 'air-1': early },
      findings: [],
    });
  });

  it('takes names that every object inherits for names like any other', () => {
    const odd = {
      ...entry,
      readings: { constructor: { text: 'x', value: null, note: '' } },
      ticks: ['toString'],
    };
    const content = stampCommissioning(none, odd, early);
    expect(content.ticks).toEqual({ toString: early });
    expect(content.readings['constructor']).toEqual({ text: 'x', value: null, note: '', at: early });
  });
});
