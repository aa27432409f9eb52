import { readJob, type UnitSystem } from '@furrow/engine';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ELECTRODES,
  GAUGES,
  type NewJob,
  newJobText,
  UNANSWERED,
  usualWidth,
  WORKS,
} from './new-job-text.ts';

const TANK: NewJob = {
  ...UNANSWERED,
  title: 'Tank 3, bottom seam',
  length: '20',
  thickness: '3/4',
  depth: '3/8',
  plus: '1/8',
  electrodes: ['3/8 in', '1/2 in'],
  most: '1000',
};
const IN = 0.0254;

function read(job: NewJob, system: UnitSystem) {
  const outcome = readJob(newJobText(job, system));
  if (!outcome.ok) throw new Error(outcome.issues.map(({ message }) => message).join('\n'));
  return outcome.value.job;
}

describe('newJobText', () => {
  it('reads back what was answered, numbers alone in the units of the boxes', () => {
    const job = read(TANK, 'inch');
    expect(job.title).toBe('Tank 3, bottom seam');
    expect(job.seam.length).toBeCloseTo(20 * 12 * IN, 9);
    expect(job.plate.thickness).toBeCloseTo(0.75 * IN, 9);
    const { wanted, plus, minus } = job.groove.depth;
    expect([wanted / IN, plus / IN, minus]).toEqual(
      [0.375, 0.125, 0].map((value) => expect.closeTo(value, 9)),
    );
    expect(job.kit.electrodes.map(({ diameter }) => diameter / IN)).toEqual(
      [0.375, 0.5].map((value) => expect.closeTo(value, 9)),
    );
    expect(job.kit.current.most).toBe(1000);
    const metric = read({ ...TANK, length: '6', thickness: '20', depth: '9,5', plus: '3' }, 'metric');
    expect([metric.seam.length, metric.plate.thickness, metric.groove.depth.wanted]).toEqual([
      6, 0.02, 0.0095,
    ]);
  });

  it('takes the width from the electrodes where it is left open, and says so in the file', () => {
    expect(usualWidth(TANK, 'inch')).toEqual({ least: '3/8 in', most: '13/16 in' });
    expect(usualWidth(TANK, 'metric')).toEqual({ least: '9 mm', most: '20 mm' });
    const text = newJobText(TANK, 'inch');
    expect(text).toContain('# What the electrodes at hand cut in one track');
    expect(read(TANK, 'inch').groove.width.most / IN).toBeCloseTo(13 / 16, 9);
    expect(newJobText({ ...TANK, widthLeast: '1/2', widthMost: '1' }, 'inch')).not.toContain('at hand cut');
  });

  it('gives a wash a floor, and no other groove', () => {
    const wash = { ...TANK, work: 'wash', widthLeast: '100', widthMost: '120' } as const;
    expect(
      read({ ...wash, length: '1', thickness: '20', depth: '3', plus: '3' }, 'metric').groove.floor_width,
    ).toBe(0.08);
    expect(newJobText(TANK, 'metric')).not.toContain('floor_width');
  });

  it('leaves out what was left open, for the reader of the file to ask for', () => {
    const outcome = readJob(newJobText({ ...UNANSWERED, electrodes: [] }, 'metric'));
    if (outcome.ok) throw new Error('an unanswered job was read');
    expect(new Set(outcome.issues.map(({ path }) => path))).toEqual(
      new Set([
        'plate.thickness',
        'groove.depth.wanted',
        'groove.depth.plus',
        'kit.current.most',
        'groove.width.least',
        'groove.width.most',
        'kit.electrodes',
      ]),
    );
  });

  it('is always a file that can be opened, whatever was typed', () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 12 });
    fc.assert(
      fc.property(
        words,
        words,
        words,
        fc.constantFrom(...WORKS),
        fc.constantFrom(...GAUGES),
        fc.subarray([...ELECTRODES]),
        (title, length, depth, work, gauge, electrodes) => {
          const text = newJobText(
            { ...TANK, title, length, depth, work: work.id, gauge: gauge.id, electrodes },
            'inch',
          );
          const outcome = readJob(text);
          expect(outcome.ok || outcome.issues.every(({ code }) => code !== 'JOB_SYNTAX')).toBe(true);
        },
      ),
      { seed: 11, numRuns: 150 },
    );
  });
});
