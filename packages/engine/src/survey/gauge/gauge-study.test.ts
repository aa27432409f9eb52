import { describe, expect, it } from 'vitest';
import { gaugeCheck, gaugeStudy, nestedStudy } from './gauge-study.ts';

const crossed = (readings: number) =>
  ['a', 'b', 'c'].flatMap((part, i) =>
    ['x', 'y'].flatMap((appraiser, j) =>
      Array.from({ length: readings }, (_, k) => ({ part, appraiser, value: 10 * i + j + 0.1 * k })),
    ),
  );

describe('a crossed gauge study', () => {
  it('tells appraisers from repeats, by either method', () => {
    for (const method of ['anova', 'average_range'] as const) {
      const study = gaugeStudy(crossed(2), method)!;
      expect(study.method).toBe(method);
      expect(study.repeatability).toBeGreaterThan(0.06);
      expect(study.repeatability).toBeLessThan(0.1);
      expect(study.reproducibility).toBeGreaterThan(0.65);
      expect(study.reproducibility).toBeLessThan(0.75);
      expect(study.reading).toBeCloseTo(Math.hypot(study.repeatability, study.reproducibility), 12);
    }
  });

  it('is none where it is not whole', () => {
    expect(gaugeStudy(crossed(2).slice(1), 'anova')).toBeUndefined();
    expect(gaugeStudy(crossed(1), 'anova')).toBeUndefined();
    expect(gaugeStudy([], 'average_range')).toBeUndefined();
  });

  it('takes a variance below 0 as 0, and says so', () => {
    const flat = ['a', 'b'].flatMap((part) =>
      ['x', 'y'].flatMap((appraiser) => [0, 1].map((value) => ({ part, appraiser, value }))),
    );
    expect(gaugeStudy(flat, 'anova')).toMatchObject({ reproducibility: 0, parts: 0, clamped: true });
  });
});

it('a nested study takes what readings add out of the days, not below 0', () => {
  const day = (mean: number) => ({ mean, sd: 0.3 });
  const study = nestedStudy(
    [
      [
        [day(1), day(1.01)],
        [day(1), day(1.02)],
      ],
    ],
    4,
  );
  expect(study).toMatchObject({ level1: expect.closeTo(0.3, 12), days: 0, clamped: true });
});

describe('a gauge check against a block', () => {
  it('holds, is in doubt or fails by the guard band', () => {
    const block = 0.01;
    const around = (off: number) => [off - 1e-5, off, off + 1e-5].map((each) => block + each);
    expect(gaugeCheck(around(0), block, 1e-6, 1e-4).verdict).toBe('holds');
    expect(gaugeCheck(around(9.5e-5), block, 1e-6, 1e-4).verdict).toBe('in_doubt');
    expect(gaugeCheck(around(-2e-4), block, 1e-6, 1e-4)).toMatchObject({
      verdict: 'fails',
      off: expect.closeTo(-2e-4, 9),
    });
  });
});
