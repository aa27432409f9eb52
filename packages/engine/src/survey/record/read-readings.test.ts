import { describe, expect, it } from 'vitest';
import { readReadings } from './read-readings.ts';

const TEXT = `furrow_readings: 1
date: 2026-03-04
gauge: bridge gauge
crew:
  - { name: A. Ames, role: operator }
passes:
  - { number: 1, current: 850 A, voltage: 42 V, travel: 28 in/min, start: "08:10" }
electrode_changes:
  - { pass: 1, at: 1.4 m }
events:
  - { pass: 1, at_m: 2.2, what: arc out }
stations:
  - { at: 60 cm, depth: 12.4 mm, width: 18 mm }
  - { at_m: 3, depth_mm: 12.5 }
`;

function issues(text: string) {
  const outcome = readReadings(text);
  return outcome.ok ? [] : outcome.issues;
}

describe('a readings file', () => {
  it('is read in SI, with keyed units and amounts as people write them', () => {
    const outcome = readReadings(TEXT);
    if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
    const { readings, revision } = outcome.value;
    expect(readings.stations).toEqual([
      { at: 0.6, depth: 0.0124, width: 0.018 },
      { at: 3, depth: 0.0125 },
    ]);
    expect(readings.passes?.[0]?.travel).toBeCloseTo((28 * 0.0254) / 60, 12);
    expect(readings.date).toBe('2026-03-04');
    expect(revision).toMatch(/^[0-9a-f]{64}$/);
  });

  it('tells where a value cannot be read, and what is accepted', () => {
    expect(issues(TEXT.replace('12.4 mm', '12.4 A'))).toMatchObject([
      { code: 'AMOUNT_KIND', path: 'stations[0].depth', position: { line: 13 } },
    ]);
    expect(issues(TEXT.replace('what: arc out', 'happened: arc out')).map(({ code }) => code)).toEqual([
      'READINGS_FIELD_MISSING',
      'READINGS_FIELD_UNKNOWN',
    ]);
  });

  it('takes each pass once', () => {
    const twice = TEXT.replace('electrode_changes', '  - { number: 1 }\nelectrode_changes');
    expect(issues(twice)).toMatchObject([
      { code: 'READINGS_COMBINATION', path: 'passes[1].number', position: { line: 8 } },
    ]);
  });

  it('says so of another version, and of what is no readings file at all', () => {
    expect(issues('furrow_readings: 2')).toMatchObject([{ code: 'READINGS_VERSION' }]);
    expect(issues('furrow: 1\ntitle: a job').map(({ code }) => code)).toContain('READINGS_FIELD_MISSING');
    expect(issues('a: [')[0]?.code).toBe('READINGS_SYNTAX');
  });
});
