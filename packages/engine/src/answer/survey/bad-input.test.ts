import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import type { Answer, SurveyReport } from '../../result/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { answerSurvey } from './answer-survey.ts';

let read: ReadJob;
let answer: Answer;

beforeAll(() => {
  const outcome = readJob(
    readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8'),
  );
  if (!outcome.ok) throw new Error('the example cannot be read');
  read = outcome.value;
  answer = answerJob({ job: read, version: '0' });
}, 60_000);

/** Depth below the plate over the distance from the middle [mm]. */
type Groove = (t: number) => number;

/** A round root between straight walls. */
function uGroove(depth: number, radius: number, wall: number): Groove {
  const touch = radius * Math.cos(wall);
  const half = touch + (depth - radius + radius * Math.sin(wall)) * Math.tan(wall);
  return (t) =>
    t <= touch
      ? depth - radius + Math.sqrt(radius * radius - t * t)
      : Math.max(0, (half - t) / Math.tan(wall));
}

/** A groove as the job wants it: 12 to 18 mm deep, 14 to 22 mm wide; its half width [mm]. */
const U = uGroove(15, 7, 0.2094);
const HALF = 8.9;

/** Points of a scan with a little roughness [mm]. */
function scanOf(groove: Groove, from: number, to: number): (readonly [number, number])[] {
  return Array.from({ length: 800 }, (_, i) => {
    const x = from + ((to - from) * (i + 0.5)) / 800;
    const rough = 0.02 * Math.sin(12.9898 * i) * Math.sin(4.1 * i * i);
    return [x, rough - groove(Math.abs(x))] as const;
  });
}

interface Written {
  readonly groove?: Groove;
  /** Ends of the scan [mm]. */
  readonly span?: readonly [number, number];
  /** What is done to each point, in millimetres. */
  readonly point?: (x: number, z: number) => readonly [number, number];
  /** Unit that the file states. */
  readonly unit?: string;
  readonly name?: string;
}

/** A scan as a file, measured for the job. */
function measured({
  groove = U,
  span = [-HALF - 12, HALF + 12],
  point = (x, z) => [x, z],
  unit = 'mm',
  name = 'at 2000 mm.csv',
}: Written): SurveyReport {
  const rows = scanOf(groove, ...span).map(([x, z]) =>
    point(x, z)
      .map((value) => value.toPrecision(9))
      .join(';'),
  );
  return surveyed(name, `x [${unit}];z [${unit}]\n${rows.join('\n')}\n`);
}

function surveyed(name: string, text: string): SurveyReport {
  const outcome = answerSurvey({
    files: [{ name, bytes: new TextEncoder().encode(text) }],
    job: { read, answer, knowledge: undefined },
    version: '0',
  });
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
}

const DECLINED: readonly (readonly [string, Written, RegExp])[] = [
  ['no groove', { groove: () => 0 }, /no groove/u],
  ['a groove wider than the scan', { span: [-0.8 * HALF, 0.8 * HALF] }, /./u],
  ['one shoulder only', { span: [-HALF - 12, 0.2] }, /only the left shoulder/u],
  ['a scan upside down', { point: (x, z) => [x, -z] }, /upside down/u],
];

describe('a scan that shows no one groove', () => {
  it.each(DECLINED)('%s: is declined with the reason, and the seam does not use it', (_, written, why) => {
    const { sections, seam } = measured(written);
    expect(sections).toHaveLength(1);
    for (const key of ['depth_mm', 'width_mm', 'area_mm2'] as const)
      expect(sections[0]![key]).toEqual({ declined: expect.stringMatching(why) });
    expect(seam!.readings).toEqual([]);
    expect(seam!.remarks.join(' ')).toContain('Nothing was measured on the seam yet');
  });

  it('two grooves: are declined as two', () => {
    const one = scanOf(U, -HALF - 12, HALF + 12);
    const rows = [0, 2 * HALF + 24].flatMap((shift) => one.map(([x, z]) => `${x + shift};${z}`));
    const { sections, seam } = surveyed('at 2000 mm.csv', `x [mm];z [mm]\n${rows.join('\n')}\n`);
    expect(sections[0]!.depth_mm).toEqual({ declined: expect.stringMatching(/two grooves/u) });
    expect(seam!.readings).toEqual([]);
  });
});

const SCALED: readonly (readonly [string, Written, string])[] = [
  ['millimetres said to be inches', { unit: 'in' }, 'mm_for_inch'],
  ['inches said to be millimetres', { point: (x, z) => [x / 25.4, z / 25.4] }, 'inch_for_mm'],
  ['millimetres said to be metres', { unit: 'm' }, 'thousandfold'],
  ['micrometres said to be millimetres', { point: (x, z) => [1000 * x, 1000 * z] }, 'thousandfold'],
  ['metres said to be millimetres', { point: (x, z) => [x / 1000, z / 1000] }, 'thousandth'],
  ['a slipped decimal', { point: (x, z) => [x, 10 * z] }, 'slipped_decimal'],
];

describe('a scan in the wrong unit', () => {
  it.each(SCALED)('%s: is set aside, and told what it would be, or declined', (_, written, why) => {
    const { seam, sections } = measured(written);
    const [reading] = seam!.readings;
    // what is finer than any scratch is no groove at all
    if (reading === undefined) {
      expect(why).toBe('thousandth');
      expect(sections[0]!.depth_mm).toHaveProperty('declined');
      return;
    }
    expect([reading.used, reading.why]).toEqual([false, why]);
    expect(Math.abs(reading.would_be_mm! - 15)).toBeLessThan(0.1);
  });
});

describe('a scan from elsewhere', () => {
  it('outside the seam: is set aside', () => {
    const [reading] = measured({ name: 'at 9000 mm.csv' }).seam!.readings;
    expect(reading).toMatchObject({ at_mm: 9000, used: false, why: 'outside_seam', would_be_mm: null });
  });

  it('of another job: is never taken for a groove that holds', () => {
    const [small, large] = [uGroove(3, 6, 1), uGroove(26, 8, 0.2)];
    for (const groove of [small, large]) {
      const { seam } = measured({ groove });
      const near = seam!.stretches.find(({ from_mm, to_mm }) => from_mm <= 2000 && to_mm >= 2000)!;
      expect(near.verdict).not.toBe('holds');
      expect(seam!.verdict).not.toBe('holds');
    }
  });
});
