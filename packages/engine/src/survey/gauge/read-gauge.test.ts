import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judgeGauge } from './judge-gauge.ts';
import { gaugeJsonSchema, readGauge } from './read-gauge.ts';

const EXAMPLE = readFileSync(
  new URL('../../../../../examples/gauges/bridge-gauge.yaml', import.meta.url),
  'utf8',
);

function read(text: string) {
  const outcome = readGauge(text);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value.gauge;
}

function issueOf(text: string) {
  const outcome = readGauge(text);
  return outcome.ok ? undefined : outcome.issues[0];
}

const crossed = (rows: string): string => `furrow_gauge: 1\ngauge: g\ncrossed:\n${rows}`;
const row = (part: string, appraiser: string, ...values: readonly number[]): string =>
  `  - { part: "${part}", appraiser: ${appraiser}, readings: [${values.map((each) => `{ reading: ${each} mm }`).join(', ')}] }\n`;
const nested = (rows: readonly (readonly [string, string, string])[]): string =>
  `furrow_gauge: 1\ngauge: g\nnested:\n${rows
    .map(
      ([standard, run, day], i) =>
        `  - { standard: ${standard}, run: ${run}, day: ${day}, readings: [{ reading: ${10 + 0.1 * i} mm }, { reading: ${10.2 + 0.1 * i} mm }] }\n`,
    )
    .join('')}`;

describe('a gauge file', () => {
  it('gives study, check and what one reading is worth', () => {
    const outcome = judgeGauge(read(EXAMPLE));
    const [taken, ...others] = outcome.crossed;
    expect(taken!.method).toBe('anova_pooled');
    expect(others.map(({ method }) => method)).toEqual(['anova', 'average_range']);
    const lines = Object.fromEntries(outcome.budget!.lines.map(({ what, u }) => [what, u]));
    expect(lines['repeatability']).toBe(taken!.repeatability);
    expect(lines['reproducibility']).toBe(taken!.reproducibility);
    expect(lines['resolution']).toBeCloseTo(1e-4 / Math.sqrt(12), 12);
    expect(lines['seating']).toBeCloseTo(2e-4 / Math.sqrt(3), 12);
    const [check] = outcome.checks;
    expect(check).toMatchObject({ verdict: 'holds', by: 'Ada', off: expect.closeTo(1e-4 / 3, 9) });
    // the deviation that was found is left as it is, and counts
    expect(lines['deviation']).toBeCloseTo(Math.hypot(check!.off, check!.u), 12);
    expect(outcome.budget!.u).toBeCloseTo(Math.hypot(...Object.values(lines)), 12);
    expect(outcome.from).toContain('analysis of variance');
  });

  it('takes a nested study by days and runs, however its rows are ordered', () => {
    const rows: [string, string, string][] = ['a', 'b'].flatMap((standard) =>
      ['r1', 'r2'].flatMap((run) =>
        ['d1', 'd2'].map((day): [string, string, string] => [standard, run, day]),
      ),
    );
    const { nested: study, budget, from } = judgeGauge(read(nested(rows)));
    expect(study!.level1).toBeCloseTo(2e-4 / Math.SQRT2, 9);
    // days 0.1 mm apart within a run, runs 0.2 mm apart
    expect(study!.level2).toBeCloseTo(1e-4 / Math.SQRT2, 9);
    expect(study!.level3).toBeCloseTo(2e-4 / Math.SQRT2, 9);
    expect(budget!.lines[0]).toEqual({ what: 'repeatability', u: study!.level1 });
    expect(from).toBe('a nested gauge study');
  });

  it('has no uncertainty of a reading without a study, and takes none from a check alone', () => {
    expect(judgeGauge(read('furrow_gauge: 1\ngauge: g')).budget).toBeUndefined();
  });

  it('averages what repeats, not what differs between hands', () => {
    const text = EXAMPLE.replace('resolution:', 'averaged: 4\nresolution:');
    const [one, four] = [judgeGauge(read(EXAMPLE)), judgeGauge(read(text))];
    const of = (outcome: typeof one, what: string): number =>
      outcome.budget!.lines.find((line) => line.what === what)!.u;
    expect(of(four, 'repeatability')).toBeCloseTo(of(one, 'repeatability') / 2, 12);
    expect(of(four, 'reproducibility')).toBe(of(one, 'reproducibility'));
  });

  it.each([
    [
      'a part that one hand did not read',
      crossed(row('1', 'A', 1, 2) + row('2', 'A', 1, 2) + row('1', 'B', 1, 2) + row('3', 'B', 1, 2)),
      /Part 2 was not read by B/u,
    ],
    [
      'rows of unequal length',
      crossed(row('1', 'A', 1, 2) + row('2', 'A', 1, 2, 3) + row('1', 'B', 1, 2) + row('2', 'B', 1, 2)),
      /as many readings/u,
    ],
    [
      'a cell twice',
      crossed(row('1', 'A', 1, 2) + row('1', 'A', 1, 2) + row('1', 'B', 1, 2) + row('2', 'B', 1, 2)),
      /Part 1 by A is there twice/u,
    ],
    [
      'one part alone',
      crossed(row('1', 'A', 1, 2) + row('1', 'B', 1, 2) + row('1', 'C', 1, 2) + row('1', 'D', 1, 2)),
      /one part/u,
    ],
    [
      'runs of unequal length',
      nested([
        ['a', 'r1', 'd1'],
        ['a', 'r1', 'd2'],
        ['a', 'r2', 'd1'],
        ['a', 'r2', 'd2'],
        ['a', 'r2', 'd3'],
      ]),
      /as many days/u,
    ],
    [
      'two studies at once',
      `${crossed(row('1', 'A', 1, 2) + row('2', 'A', 1, 2) + row('1', 'B', 1, 2) + row('2', 'B', 1, 2))}nested: [${Array(4).fill('{ standard: a, run: r, day: d, readings: [{ reading: 1 mm }, { reading: 1 mm }] }').join(', ')}]`,
      /crossed study and a nested one/u,
    ],
  ])('refuses %s, in words', (_, text, message) => {
    expect(issueOf(text)).toMatchObject({
      code: 'GAUGE_COMBINATION',
      message: expect.stringMatching(message),
    });
  });

  it('refuses a unit that is no length, with the place', () => {
    expect(issueOf(EXAMPLE.replace('allowed: 0.2 mm', 'allowed: 0.2 kg'))).toMatchObject({
      path: 'checks[0].allowed',
      position: { line: EXAMPLE.split('\n').findIndex((line) => line.includes('allowed')) + 1, column: 14 },
    });
  });

  it('has a schema that its own example obeys', () => {
    expect(gaugeJsonSchema()['required']).toEqual(['furrow_gauge', 'gauge']);
  });
});
