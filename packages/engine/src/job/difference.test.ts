import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jobDifference } from './difference.ts';
import { type ReadJob, readJob } from './read-job.ts';

const TEXT = readFileSync(new URL('../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');

function read(text: string): ReadJob {
  const outcome = readJob(text);
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
}

function words(from: string, to: string, system: 'inch' | 'metric' = 'metric'): string[] {
  const changed = TEXT.replace(from, to);
  expect(changed).not.toBe(TEXT);
  return jobDifference(read(TEXT), read(changed), system).map((each) => each.words);
}

describe('the difference between two revisions of a job', () => {
  it('is none for the same content in another layout, and for a default that is now stated', () => {
    expect(words('length: 6 m', 'length_mm: 6000')).toEqual([]);
    expect(words('  path: straight\n', '')).toEqual([]);
  });

  it('is told with the part it belongs to, in the units asked for', () => {
    expect(words('wanted: 12 mm', 'wanted: 14 mm')).toEqual(['Groove, depth: 12.0 mm before, 14.0 mm now.']);
    expect(words('thickness: 32 mm', 'thickness: 1 in', 'inch')).toEqual([
      'Plate, thickness: 1 1/4 in before, 1 in now.',
    ]);
    expect(words('plus: 6 mm', 'plus: 5 mm')).toEqual([
      'Groove, depth, deeper by at most: 6.0 mm before, 5.0 mm now.',
    ]);
  });

  it('shows all figures where the usual ones do not tell two amounts apart', () => {
    expect(words('wanted: 12 mm', 'wanted: 13 mm', 'inch')).toEqual([
      'Groove, depth: 0.4724 in before, 0.5118 in now.',
    ]);
    expect(words('wanted: 12 mm', 'wanted: 12.0004 mm')).toEqual([
      'Groove, depth: 12 mm before, 12.0004 mm now.',
    ]);
  });

  it('tells of what was stated for the first time and of what is stated no more', () => {
    expect(words('C: 0.16, Si: 0.35', 'C: 0.16')).toEqual([
      'Plate, composition, Si: not stated any more, 0.35 before.',
    ]);
    expect(words('Mn: 1.4', 'Mn: 1.4, Cr: 0.2')).toEqual(['Plate, composition, Cr: 0.2, not stated before.']);
  });

  it('tells entries of a list by name: one put in front does not change the others', () => {
    const entry = '    - { diameter: 5/16 in, length: 17 in, count: 10 }\n';
    expect(words('  electrodes:\n', `  electrodes:\n${entry}`)).toEqual(['Kit, electrode 7.9 mm was added.']);
    expect(words('count: 60', 'count: 6')).toEqual(['Kit, electrode 12.7 mm, in stock: 60 before, 6 now.']);
    const last = TEXT.split('\n').find((line) => line.includes('5/8 in'))!;
    expect(words(`${last}\n`, '')).toEqual(['Kit, electrode 15.9 mm was taken out.']);
  });

  it('tells of another order, and of entries with one name apart', () => {
    const lines = TEXT.split('\n').filter((line) => line.includes('- { diameter'));
    const turned = TEXT.replace(lines.join('\n'), [...lines].reverse().join('\n'));
    expect(jobDifference(read(TEXT), read(turned), 'metric').map((each) => each.words)).toEqual([
      'Kit, order of the electrodes: 9.5 mm, 12.7 mm, 15.9 mm before, 15.9 mm, 12.7 mm, 9.5 mm now.',
    ]);
    expect(words(`${lines[0]}\n`, `${lines[0]}\n${lines[0]!.replace('80', '8')}\n`)).toEqual([
      'Kit, electrode 9.5 mm (2) was added.',
    ]);
  });

  it('shows texts as they are written', () => {
    expect(words('second side', 'second <b>side</b>')[0]).toContain(
      '“Penstock section 7, long seam, second <b>side</b>” now',
    );
  });
});
