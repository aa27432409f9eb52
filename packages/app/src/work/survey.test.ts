import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planOf } from '../testing/index.ts';
import { type SurveyPart, type SurveyRequest, surveyParts } from './survey.ts';

const JOB = readFileSync(new URL('../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');
const { read, answer } = planOf(JOB);
const texts = new Map<Blob, string>();
const shares: number[] = [];

function file(name: string, text: string): SurveyRequest['files'][number] {
  const blob = new Blob([text]);
  texts.set(blob, text);
  return { name, file: blob };
}

function surveyed(asked: Partial<SurveyRequest>): SurveyPart {
  const request = {
    readings: undefined,
    files: [],
    version: '0',
    read,
    answer,
    entry: { id: 'g', date: '2026-03-04' },
  };
  const steps = [
    ...surveyParts({ ...request, ...asked }, (share) => shares.push(share), {
      bytesOf: (blob) => new TextEncoder().encode(texts.get(blob)).buffer as ArrayBuffer,
    }),
  ];
  const last = steps.at(-1);
  if (last?.is !== 'part') throw new Error('there is no part');
  return last.part;
}

describe('measuring in the worker', () => {
  it('fuses the record and the files along the seam', () => {
    const part = surveyed({
      readings: 'furrow_readings: 1\nstations: [{ at: 0.1 m, depth: 12 mm }]\n',
      files: [file('gauge.csv', 'station (mm);depth (mm)\n200;12.2\n')],
    });
    if (part.is !== 'surveyed') throw new Error('it was not measured');
    expect(part.report.seam!.readings.map(({ at_mm }) => at_mm).sort()).toEqual([100, 200]);
    expect(part.unread).toEqual([]);
  });

  it('tells how far it is inside the work too, never backwards', () => {
    shares.length = 0;
    const rows = Array.from({ length: 30 }, (_, k) =>
      Array.from({ length: 200 }, (_, i) => {
        const y = -20 + 0.2 * i;
        return `${10 * k};${y};${Math.abs(y) < 8 ? -Math.sqrt(150 - y * y) : 0}`;
      }).join('\n'),
    );
    surveyed({ files: [file('scan.csv', `station [mm];x [mm];z [mm]\n${rows.join('\n')}\n`)] });
    expect(shares.length).toBeGreaterThan(2);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('does not let one file that nobody can read hide the others, and says which it is', () => {
    const part = surveyed({
      files: [
        file('notes.txt', 'hello there\nworld\n'),
        file('gauge.csv', 'station (mm);depth (mm)\n200;12.2\n'),
      ],
    });
    if (part.is !== 'surveyed') throw new Error('it was not measured');
    expect(part.report.seam!.readings).toHaveLength(1);
    expect(part.unread).toMatchObject([{ name: 'notes.txt', why: expect.stringContaining('notes.txt') }]);
  });

  it('says why where the record itself cannot be read', () => {
    expect(surveyed({ readings: 'furrow_readings: 1\nstations: [{ at: here }]\n' })).toMatchObject({
      is: 'unread',
    });
  });
});
