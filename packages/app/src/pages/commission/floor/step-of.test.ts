import { readFileSync } from 'node:fs';
import { answerJob, readJob, readKit, readReading, type UnitSystem } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { MemoryStorage } from '../../../testing/index.ts';
import { keepRoundPlace, roundPlaceOf } from './round-memory.ts';
import { dayOf, isOfEarlierDay, stepOf } from './step-of.ts';
import { numberOf, typedUnit, withUnit } from './typed-number.ts';

const CHECKS = [{ id: 'a' }, { id: 'b' }, { id: 'c' }];

describe('stepOf', () => {
  it('goes on where the person was, else at the first check that is not made, else at the first; at the end where the round was ended', () => {
    expect(stepOf(CHECKS, 'c', () => false)).toBe(2);
    expect(stepOf(CHECKS, 'gone', (id) => id === 'a')).toBe(1);
    expect(stepOf(CHECKS, undefined, () => true)).toBe(0);
    expect(stepOf(CHECKS, 'end', () => false)).toBe(3);
  });
});

describe('isOfEarlierDay', () => {
  const saved = { text: '6 bar', at: '2026-03-04T10:00:00' };
  it('asks for a reading of the day every day, and only for what is still the old one', () => {
    expect(dayOf(saved.at)).toBe('2026-03-04');
    expect(isOfEarlierDay('daily', saved, '6 bar', '2026-03-05')).toBe(true);
    expect(isOfEarlierDay('daily', saved, '6 bar', '2026-03-04')).toBe(false);
    expect(isOfEarlierDay('daily', saved, '6.1 bar', '2026-03-05')).toBe(false);
    expect(isOfEarlierDay('daily', undefined, '6 bar', '2026-03-05')).toBe(false);
    expect(isOfEarlierDay('first', saved, '6 bar', '2026-03-05')).toBe(false);
  });
});

it('keeps where the person was, and begins with the list where nothing readable is kept', () => {
  const memory = new MemoryStorage();
  const place = { view: 'change', changed: ['leads'], check: 'b' } as const;
  expect(roundPlaceOf(memory, 'x').view).toBe('list');
  keepRoundPlace(memory, 'x', place);
  expect(roundPlaceOf(memory, 'x')).toEqual(place);
  memory.setItem('furrow.round.x', '{"view":"weekly"}');
  expect(roundPlaceOf(memory, 'x').view).toBe('list');
});

describe('a number typed with the keys', () => {
  const example = (name: string): string =>
    readFileSync(new URL(`../../../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
  const read = readJob(example('penstock-seam'));
  const kit = readKit(example('yard-kit'));
  if (!read.ok || !kit.ok) throw new Error('the demo cannot be read');
  const checks = answerJob({ job: read.value, kit: kit.value, version: 'test' }).supply!.checks;

  it.each(['metric', 'inch'] as UnitSystem[])('is read with its unit at every check (%s)', (units) => {
    for (const check of checks) {
      if (check.kind !== 'measure') continue;
      const unit = typedUnit(check, units);
      const text = withUnit('12.5', unit);
      expect(readReading(check, text).ok, `${check.id}: ${text}`).toBe(true);
      expect(numberOf(text, unit)).toBe('12.5');
    }
  });

  it('keeps another unit that was typed, and nothing where nothing is', () => {
    expect(withUnit('90 psi', 'bar')).toBe('90 psi');
    expect(withUnit(' ', 'bar')).toBe('');
    expect(numberOf('90 psi', 'bar')).toBe('90 psi');
    expect(withUnit('-0.5', 'V')).toBe('-0.5 V');
  });
});
