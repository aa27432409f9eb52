import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import type { Answer, SurveyReport } from '../../result/index.ts';
import { surveySchema } from '../../result/index.ts';
import { REHEARSAL_CHANNELS, rehearsalHead, rehearsalRows, rehearse } from '../../run/index.ts';
import { readGauge } from '../../survey/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';
import { gaugeFrom, gaugeOfSurvey } from './answer-gauge.ts';
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

function surveyed(text: string, name = 'gauge.csv'): SurveyReport {
  const outcome = answerSurvey({
    files: [{ name, bytes: new TextEncoder().encode(text) }],
    job: { read, answer, knowledge: undefined },
    version: '0',
  });
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
}

function table(rows: readonly (readonly [number, number])[]): string {
  return ['station (m);depth (mm)', ...rows.map(([at, depth]) => `${at};${depth}`)].join('\n');
}

const GOOD = [0.3, 1, 1.7, 2.4, 3.1, 3.8, 4.5, 5.2, 5.8].map((at) => [at, 15] as const);

describe('a survey of a job', () => {
  it('holds where the gauge says so, and obeys its schema', () => {
    const report = surveyed(table(GOOD));
    expect(report.seam!.verdict).toBe('holds');
    expect(report.seam!.curve[0]!.at_mm).toBe(0);
    expect(report.seam!.curve.at(-1)!.at_mm).toBeCloseTo(6000, 6);
    expect(report.seam!.limits).toEqual({
      least_mm: expect.closeTo(12, 9),
      most_mm: expect.closeTo(18, 9),
      plate_left_least_mm: expect.closeTo(10, 9),
    });
    const near = report.seam!.curve.find(({ at_mm }) => Math.abs(at_mm - 2400) < 1)!;
    expect(near.depth_mm.p50).toBeCloseTo(15, 0);
    // plate left is the thickness less the depth, its ends the other way round
    expect(near.remaining_mm.p05 + near.depth_mm.p95).toBeCloseTo(1000 * read.job.plate.thickness, 6);
    expect(surveySchema.safeParse(JSON.parse(JSON.stringify(report))).success).toBe(true);
    expect(report.seam!.readings[0]!.depth_mm).toEqual({
      value: expect.closeTo(15, 9),
      u95: expect.closeTo(0.784, 9),
    });
  });

  it('fails where it is shallow, with what mends it, and says where to measure next', () => {
    const { seam } = surveyed(table([...GOOD, [2.35, 9], [2.45, 9.1], [2.5, 9]]));
    expect(seam!.verdict).toBe('fails');
    const bad = seam!.stretches.find(({ verdict }) => verdict === 'fails')!;
    expect(bad.from_mm).toBeLessThan(2450);
    expect(bad.to_mm).toBeGreaterThan(2350);
    expect(bad.miss).toBe('shallow');
    expect(seam!.recut[0]!.from_mm).toBe(bad.from_mm);
    expect(seam!.enough).toBe(seam!.measure_next.length === 0);
    expect(seam!.risk_unit).toBe(read.job.rates.currency);
  });

  it('sets aside what a wrong unit or place explains, says what it would be, and counts the rest alone', () => {
    const { seam } = surveyed(table([...GOOD, [4, 15 / 25.4], [4.2, 150], [4.3, 0.015], [9, 15]]));
    const aside = seam!.readings.filter(({ used }) => !used);
    expect(aside.map(({ why }) => why)).toEqual([
      'inch_for_mm',
      'slipped_decimal',
      'thousandth',
      'outside_seam',
    ]);
    for (const { would_be_mm, why } of aside)
      if (why !== 'outside_seam') expect(would_be_mm).toBeCloseTo(15, 6);
    expect(seam!.verdict).toBe('holds');
  });

  it('takes a place where nothing was cut for what it is', () => {
    const { seam } = surveyed(table([...GOOD, [4, 0]]));
    expect(seam!.verdict).toBe('fails');
    expect(seam!.readings.at(-1)!.used).toBe(true);
    const gap = seam!.stretches.find(({ verdict }) => verdict === 'fails')!;
    expect([gap.from_mm, gap.to_mm, gap.miss]).toEqual([
      expect.closeTo(3900, 6),
      expect.closeTo(4125, 6),
      'shallow',
    ]);
    expect(gap.chance_wrong_reject).toBeLessThan(1e-6);
    // where it begins and ends nobody has seen: that is gauged first, the nearer the next good place the nearer
    expect(seam!.recut[0]).toMatchObject({
      ...{ from_mm: gap.from_mm, to_mm: gap.to_mm },
      plan: { kind: 'none', missing_mm: expect.closeTo(12, 1) },
    });
    expect(seam!.recut[0]!.plan.says[0]).toMatch(/gauge to both sides/u);
    expect(seam!.measure_next.slice(0, 2).map(({ at_mm }) => at_mm)).toEqual([
      expect.closeTo(3950, 6),
      expect.closeTo(4062.5, 6),
    ]);
  });

  it('mends a fault whose ends were gauged from the depth that was read, not from the curve beside it', () => {
    const ends = [
      [3.97, 15],
      [4.03, 15],
    ] as const;
    const { seam } = surveyed(table([...GOOD, ...ends, [4, 6]]));
    const low = seam!.recut[0]!.plan;
    expect(low.kind).toBe('pass');
    expect(low.take_off_mm!).toBeGreaterThan(6);
    expect(low.take_off_mm!).toBeLessThan(12);
    expect(low.chance_plate_kept!).toBeGreaterThanOrEqual(0.99);
    expect(seam!.stretches.filter(({ verdict }) => verdict === 'fails')).toHaveLength(1);
  });

  it('does not judge the groove by what was read before its last pass', () => {
    const last = answer.basis!.plan!.passes.at(-1)!;
    expect(last.number).toBeGreaterThan(1);
    const text = `furrow_readings: 1\nstations:\n${GOOD.map(([at, depth]) => `  - { at: ${at} m, depth: ${depth} mm }\n`).join('')}  - { at: 3 m, depth: 7 mm, after_pass: ${last.number - 1} }\n`;
    const { seam } = surveyed(text, 'readings.yaml');
    expect(seam!.readings.filter(({ used }) => !used)).toMatchObject([
      { at_mm: 3000, why: 'before_last_pass', would_be_mm: null },
    ]);
    expect(seam!.verdict).toBe('holds');
  });

  it('does not judge the groove by a file that was measured before its last pass, and says when that was', () => {
    const layered: Answer = {
      ...answer,
      basis: {
        ...answer.basis!,
        plan: {
          ...answer.basis!.plan!,
          passes: [1, 2].map((number) => ({
            ...answer.basis!.plan!.passes[0]!,
            number,
            layer: number,
            from: 0,
            to: read.job.seam.length,
          })),
        },
      },
    };
    const scan = new TextEncoder().encode(table([[1, 8]]));
    const sha256 = createHash('sha256').update(scan).digest('hex');
    const record = `furrow_readings: 1\nfiles: [{ name: g.csv, sha256: ${sha256}, after_pass: 1 }]\n`;
    const outcome = answerSurvey({
      files: [
        { name: 'g.csv', bytes: scan },
        { name: 'readings', bytes: new TextEncoder().encode(record) },
      ],
      job: { read, answer: layered, knowledge: undefined },
      version: '0',
    });
    expect(outcome.ok && outcome.value.seam!.readings.map(({ why }) => why)).toEqual(['before_last_pass']);
    // it says how deep the first layer was cut, so it teaches
    expect(outcome.ok && outcome.value.seam!.teaches.readings).toBe(
      layered.basis!.plan!.passes[0]!.setByGauge ? 0 : 1,
    );
  });

  it('takes the uncertainty of a reading from the study of the gauge, and no reading by a gauge that failed', () => {
    const text = readFileSync(
      new URL('../../../../../examples/gauges/bridge-gauge.yaml', import.meta.url),
      'utf8',
    );
    const by = (gaugeText: string) => {
      const gauge = readGauge(gaugeText);
      if (!gauge.ok) throw new Error(gauge.issues[0]?.message);
      const files = [{ name: 'g.csv', bytes: new TextEncoder().encode(table(GOOD)) }];
      const outcome = answerSurvey({
        files,
        job: { read, answer, knowledge: undefined },
        gauge: gaugeOfSurvey(gauge.value),
        version: '0',
      });
      if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
      return outcome.value;
    };
    const good = by(text);
    expect(good.inputs.gauge_u_mm).toBeCloseTo(0.2141, 3);
    expect(good.inputs.gauge_u_from).toMatch(
      /^bridge gauge 3: a crossed gauge study by analysis of variance/u,
    );
    expect(good.seam!.readings[0]!.depth_mm.u95).toBeCloseTo(1.96 * good.inputs.gauge_u_mm!, 9);
    const failed = by(text.replace('block: 10 mm', 'block: 9 mm'));
    expect(failed.gauge_check).toMatchObject({ verdict: 'fails', by: 'Ada' });
    expect(failed.seam!.readings.every(({ why }) => why === 'gauge_failed')).toBe(true);
    expect(failed.remarks[0]).toMatch(/failed its check/u);
    // without a study the deviation on the block adds to what the job states
    const [head, , rest] = text.split(/crossed:|checks:/u);
    const unstudied = by(`${head}checks:${rest}`);
    expect(unstudied.inputs.gauge_u_mm).toBeCloseTo(
      Math.hypot(1000 * read.job.kit.gauge.reading_sd, good.gauge_check!.off_mm, good.gauge_check!.u_mm),
      9,
    );
  });

  it('takes the gauge that the shop keeps, unless the readings are of another or state their own spread', () => {
    const text = readFileSync(
      new URL('../../../../../examples/gauges/bridge-gauge.yaml', import.meta.url),
      'utf8',
    );
    const by = (record: string): SurveyReport => {
      const outcome = answerSurvey({
        files: [
          {
            name: 'readings',
            bytes: new TextEncoder().encode(
              `furrow_readings: 1\n${record}stations: [{ at: 1 m, depth: 15 mm }]\n`,
            ),
          },
        ],
        job: { read, answer, knowledge: undefined },
        shopGauge: gaugeFrom(text),
        version: '0',
      });
      if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
      return outcome.value;
    };
    for (const same of ['', 'gauge: Bridge Gauge 3\n'])
      expect(by(same).inputs.gauge_u_from).toMatch(/^bridge gauge 3: a crossed gauge study/u);
    const other = by('gauge: dial gauge\n');
    expect(other.inputs.gauge_u_mm).toBeCloseTo(1000 * read.job.kit.gauge.reading_sd, 9);
    expect(other.remarks[0]).toMatch(/taken with “dial gauge”.*“bridge gauge 3”: its study is not used/u);
    const own = by('reading_spread: 0.3 mm\n');
    expect([own.inputs.gauge_u_mm, own.remarks[0]]).toEqual([
      expect.closeTo(0.3, 9),
      expect.stringContaining('states the spread'),
    ]);
    // a check of the day that failed is not outvoted by one that held before
    const failed = by(
      'gauge_check: { block: 10 mm, allowed: 0.2 mm, readings: [{ reading: 12 mm }, { reading: 12 mm }] }\n',
    );
    expect(failed.seam!.readings[0]!.why).toBe('gauge_failed');
  });

  it('judges the check that a readings file tells', () => {
    const check = (shown: number) =>
      `gauge_check: { block: 10 mm, allowed: 0.2 mm, readings: [{ reading: ${shown} mm }, { reading: ${shown} mm }] }`;
    const text = (shown: number) =>
      `furrow_readings: 1\n${check(shown)}\nstations: [{ at: 1 m, depth: 15 mm }]\n`;
    expect(surveyed(text(10.1), 'r.yaml').gauge_check).toMatchObject({
      verdict: 'holds',
      off_mm: expect.closeTo(0.1, 9),
    });
    expect(surveyed(text(12), 'r.yaml').seam!.readings[0]!.why).toBe('gauge_failed');
  });

  it('fuses the widths that were measured, and judges them against their own band', () => {
    const rows = (width: (at: number) => number | string): string =>
      ['station (m);depth (mm);width (mm)', ...GOOD.map(([at, depth]) => `${at};${depth};${width(at)}`)].join(
        '\n',
      );
    const unmeasured = surveyed(table(GOOD)).seam!;
    expect(unmeasured.width.readings).toBe(0);
    const good = surveyed(rows(() => 17)).seam!;
    expect(good.width).toMatchObject({
      verdict: 'holds',
      readings: GOOD.length,
      set_aside: 0,
      limits: { least_mm: expect.closeTo(14, 9), most_mm: expect.closeTo(22, 9) },
    });
    expect(good.verdict).toBe('holds');
    const at24 = (seam: typeof good) => seam.curve.find(({ at_mm }) => Math.abs(at_mm - 2400) < 1)!.width_mm;
    expect(at24(good).p50).toBeCloseTo(17, 0);
    expect(at24(good).p95 - at24(good).p05).toBeLessThan(at24(unmeasured).p95 - at24(unmeasured).p05);
    const wide = surveyed(rows(() => 25)).seam!;
    expect([wide.width.verdict, wide.verdict]).toEqual(['fails', 'fails']);
    expect(wide.width.stretches[0]!.miss).toBe('deep');
    expect(wide.stretches.every(({ verdict }) => verdict === 'holds')).toBe(true);
    // one written in inches is no width of this groove
    const slipped = surveyed(rows((at) => (at === 1 ? 0.669 : 17))).seam!;
    expect(slipped.width).toMatchObject({ verdict: 'holds', readings: GOOD.length - 1, set_aside: 1 });
  });

  it('judges the plate left by itself, and tells what the readings make of the spreads', () => {
    const { seam } = surveyed(table(GOOD));
    expect(seam!.remaining).toMatchObject({ verdict: 'holds', least_mm: expect.closeTo(10, 9) });
    const { common, course, common_before: before, course_before: courseBefore } = seam!.spread;
    // nine readings alike say that the course is steadier than was thought
    expect(course).toBeLessThan(courseBefore);
    expect(Math.abs(common / before - 1)).toBeLessThan(0.15);
    const thin = 1000 * read.job.plate.thickness - 9;
    const through = surveyed(table(GOOD.map(([at]) => [at, thin] as const))).seam!;
    expect(through.remaining.verdict).toBe('fails');
    expect(through.remaining.stretches.every(({ miss }) => miss === 'deep')).toBe(true);
  });

  it('predicts by the log that the readings name, which is no file of the groove', () => {
    const plan = answer.basis!.plan!;
    const belief = beliefOfJob(read.job, undefined);
    const { batches } = rehearse({ job: read.job, plan, belief, seed: 5, rate: 5, faults: [] });
    const log = new TextEncoder().encode(
      rehearsalHead('played', REHEARSAL_CHANNELS) +
        [...batches].map((batch) => rehearsalRows(batch, REHEARSAL_CHANNELS)).join(''),
    );
    const sha256 = createHash('sha256').update(log).digest('hex');
    const record = (hash: string) =>
      new TextEncoder().encode(`furrow_readings: 1\nrun: { name: log.csv, sha256: ${hash} }\n`);
    const asked = (files: readonly { name: string; bytes: Uint8Array }[]): SurveyReport => {
      const outcome = answerSurvey({ files, job: { read, answer, knowledge: undefined }, version: '0' });
      if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
      return outcome.value;
    };
    const named = { name: 'readings', bytes: record(sha256) };
    const by = asked([{ name: 'log.csv', bytes: log }, named]);
    expect(by.seam!.prediction).toBe('run');
    expect(by.inputs.run).toEqual({ file: 'log.csv', sha256 });
    expect(by.reading.map(({ file }) => file)).toEqual(['readings']);
    // what the log does not tell of this plate remains: the band is narrower than that of the plan, and not gone
    const wide = (report: SurveyReport): number =>
      report.seam!.curve[120]!.depth_mm.p95 / report.seam!.curve[120]!.depth_mm.p05;
    const without = asked([named]);
    expect(wide(by)).toBeGreaterThan(1.05);
    expect(without.seam!.prediction).toBe('plan');
    expect(without.inputs.run).toBeNull();
    expect(without.remarks[0]).toBe(
      'The log log.csv of the run is not here. The plan is the prediction in its place.',
    );
  });

  it('says so of a groove of another job', () => {
    const { seam } = surveyed(table(GOOD.map(([at]) => [at, 4.1] as const)));
    expect(seam!.verdict).toBe('fails');
    expect(seam!.remarks.join(' ')).toMatch(/whether they are of this groove/u);
  });

  it('tells without a reading what the plan alone predicts', () => {
    const outcome = answerSurvey({ files: [], job: { read, answer, knowledge: undefined }, version: '0' });
    if (!outcome.ok) throw new Error('it was refused');
    expect(outcome.value.seam!.remarks.join(' ')).toMatch(/Nothing was measured/u);
  });

  it('tells how far it is, from reading to the last section, never backwards', () => {
    const rows = Array.from({ length: 60 }, (_, k) =>
      Array.from({ length: 120 }, (__, i) => {
        const x = -0.02 + (0.04 * i) / 119;
        const depth = Math.abs(x) < 0.006 ? Math.sqrt(0.006 ** 2 - x * x) : 0;
        return `${(1000 * x).toFixed(3)} ${(3 * k).toFixed(1)} ${(-1000 * depth + 0.01 * Math.sin(37 * i + k)).toFixed(4)}`;
      }).join('\n'),
    );
    const told: number[] = [];
    const outcome = answerSurvey({
      files: [{ name: 'c.xyz', bytes: new TextEncoder().encode(rows.join('\n')) }],
      progress: (share) => told.push(share),
      version: '0',
    });
    expect(outcome.ok).toBe(true);
    expect(told.length).toBeGreaterThan(3);
    expect(told.at(-1)).toBe(1);
    expect([...told].sort((a, b) => a - b)).toEqual(told);
  });

  it('refuses a file that holds nothing of a groove, by its name', () => {
    const outcome = answerSurvey({
      files: [{ name: 'notes.txt', bytes: new TextEncoder().encode('hello there\nworld\n') }],
      version: '0',
    });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok)
      expect(outcome.issues[0]).toMatchObject({
        code: 'SURVEY_NOT_READABLE',
        message: expect.stringMatching(/^notes\.txt: /u),
      });
  });
});

describe('a groove that was cut again', () => {
  const SHALLOW = [
    [2.35, 9],
    [2.45, 9.1],
    [2.5, 9],
  ] as const;
  const record = (after: readonly string[], recuts = 'recuts: [{ from: 2.2 m, to: 2.7 m }]'): string =>
    [
      'furrow_readings: 1',
      recuts,
      'stations:',
      ...[...GOOD, ...SHALLOW].map(([at, depth]) => `  - { at: ${at} m, depth: ${depth} mm }`),
      ...after.map((one) => `  - { ${one}, after_recut: 1 }`),
    ].join('\n');

  it('is in doubt where it was cut until it is measured there again; what was read before counts no more', () => {
    const { seam } = surveyed(record([]), 'readings.yaml');
    expect(seam!.verdict).toBe('in_doubt');
    expect(seam!.history).toMatchObject([{ after_recut: 0, verdict: 'fails', readings_used: 12 }]);
    expect(seam!.cut_again).toEqual([{ from_mm: 2200, to_mm: 2700 }]);
    const gone = seam!.readings.filter(({ why }) => why === 'cut_again').map(({ at_mm }) => at_mm);
    expect(gone).toEqual([2400, 2350, 2450, 2500]);
    // where the doubt is: nothing that was read elsewhere takes it away
    expect(Math.abs(seam!.measure_next[0]!.at_mm - 2450)).toBeLessThan(260);
  });

  it('holds once it was measured again, and the verdict before stays in the history', () => {
    const again = [2.25, 2.35, 2.45, 2.55, 2.65].map((at) => `at: ${at} m, depth: 15 mm`);
    const { seam } = surveyed(record(again), 'readings.yaml');
    expect(seam!.verdict).toBe('holds');
    expect(seam!.history.map(({ verdict }) => verdict)).toEqual(['fails']);
  });

  it('is read by what the record says of the file and of the gauge', () => {
    const rows = 'station;depth\n1000;0.59\n2000;0.6\n';
    const bytes = new TextEncoder().encode(rows);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const text = [
      'furrow_readings: 1',
      'reading_spread: 0.2 mm',
      'spread_from: gauge study of March, analysis of variance',
      'recuts: [{ from: 0.9 m, to: 1.1 m }]',
      `files: [{ name: other.csv, sha256: ${sha256}, unit: in, after_recut: 1 }]`,
    ].join('\n');
    const outcome = answerSurvey({
      files: [
        { name: 'other.csv', bytes },
        { name: 'readings.yaml', bytes: new TextEncoder().encode(text) },
      ],
      job: { read, answer, knowledge: undefined },
      version: '0',
    });
    if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
    const { inputs, seam } = outcome.value;
    expect(inputs.gauge_u_from).toBe('gauge study of March, analysis of variance');
    expect(inputs.gauge_u_mm).toBeCloseTo(0.2, 9);
    // the depth is in inches as the record says, and was read after the recut
    expect(seam!.readings.map(({ depth_mm }) => depth_mm.value)).toEqual([
      expect.closeTo(14.986, 3),
      expect.closeTo(15.24, 3),
    ]);
    expect(seam!.history[0]!.readings_used).toBe(0);
  });

  it('refuses a recut that ends before it begins, and a reading after one that is not told', () => {
    const wrong = (text: string): string => {
      const outcome = answerSurvey({
        files: [{ name: 'r.yaml', bytes: new TextEncoder().encode(text) }],
        version: '0',
      });
      return outcome.ok ? '' : outcome.issues.map(({ message }) => message).join(' ');
    };
    expect(wrong(record([], 'recuts: [{ from: 2.7 m, to: 2.2 m }]'))).toContain('ends before it begins');
    expect(wrong(record(['at: 1 m, depth: 15 mm'], 'note: none'))).toContain(
      'after recut 1, and the file tells of 0',
    );
  });
});
