import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import { type ReadKit, readKit } from '../../kit/index.ts';
import { answerHazard, answerJob } from '../index.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

function job(change: (text: string) => string): ReadJob {
  const read = readJob(change(example('defect-pocket')));
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return read.value;
}

function kit(change: (text: string) => string = (text) => text): ReadKit {
  const read = readKit(change(example('yard-kit')));
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return read.value;
}

const inBay = (name: string) => (text: string) => `${text}\nsite: { bay: ${name} }\n`;

describe('the bay of a job', () => {
  it.each([
    ['names none', (text: string) => text, kit(), 0],
    ['names another', inBay('Slip 1'), kit(), 1],
    [
      'names one, where the kit of an older file names none',
      inBay('Bay 2'),
      kit((text) => text.replace('  name: Bay 2\n', '')),
      1,
    ],
    [
      'names one, where the kit describes none',
      inBay('Bay 2'),
      kit((text) => text.slice(0, text.indexOf('\nbay:'))),
      1,
    ],
  ] as const)('is drawn without walls and station where the job %s', (_when, change, read, told) => {
    const own = job(change);
    const answer = answerJob({ job: own, version: 'x', kit: read });
    expect(answer.supply?.place).toBeNull();
    expect(answer.supply?.issues.filter(({ path }) => path === 'site.bay')).toHaveLength(told);
    // the fire zone lies around a seam of the job's own length, not around the one in the bay
    const [first, last] = answerHazard(own, answer, read).fire_zone.seam_m;
    expect(Math.hypot(last!.x_m - first!.x_m, last!.y_m - first!.y_m)).toBeCloseTo(own.job.seam.length, 6);
  });

  it('is the kit’s where the job names it, however it is written', () => {
    const own = job(inBay('"  BAY 2 "'));
    const answer = answerJob({ job: own, version: 'x', kit: kit() });
    // a place of the bay, whatever job lies there
    expect(answer.supply?.place?.bay.workpiece.name).toBe('Roller bed');
    expect(answer.supply?.issues.some(({ path }) => path === 'site.bay')).toBe(false);
  });

  it.each([
    ['short against the job', inBay('Bay 2'), true],
    [
      'as long as the job’s, within a tenth',
      (text: string) => inBay('Bay 2')(text).replace('length: 180 mm', 'length: 6.5 m'),
      false,
    ],
  ] as const)('is told to lie where another job lay where its seam is %s', (_what, change, isTold) => {
    const cautions = answerJob({ job: job(change), version: 'x', kit: kit() }).supply?.place?.cautions ?? [];
    expect(cautions.some((caution) => caution.includes('not as long as that of the job'))).toBe(isTold);
  });
});
