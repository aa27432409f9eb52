import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import { sentencesWritten, sentenceText } from '../../quantity/index.ts';
import { type Answer, type RunReport, runSchema } from '../../result/index.ts';
import { REHEARSAL_CHANNELS, readFaults, rehearsalHead, rehearsalRows, rehearse } from '../../run/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';
import { answerRun, REHEARSAL_MARK, type RunQuestion } from './answer-run.ts';

let read: ReadJob;
let answer: Answer;

beforeAll(() => {
  const text = readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');
  const outcome = readJob(text);
  if (!outcome.ok) throw new Error('the example cannot be read');
  read = outcome.value;
  answer = answerJob({ job: read, version: '0' });
}, 60_000);

/** The file of a rehearsal with faults, cut off after some passes if wanted. */
function fileOf(faults: string, passes = 99, rate = 10): string {
  const { job } = read;
  const plan = { ...answer.basis!.plan, passes: answer.basis!.plan.passes.slice(0, passes) };
  const asked = readFaults(faults, job, plan, 1);
  if (!asked.ok) throw new Error(asked.issues[0]!.message);
  const show = rehearse({
    job,
    plan,
    belief: beliefOfJob(job, undefined),
    seed: 1,
    rate,
    faults: asked.value,
  });
  return [
    rehearsalHead(`${REHEARSAL_MARK}: made up`, REHEARSAL_CHANNELS),
    ...[...show.batches].map((batch) => rehearsalRows(batch, REHEARSAL_CHANNELS)),
  ].join('');
}

function reportOf(text: string, question: Partial<RunQuestion> = {}, piece = text.length): RunReport {
  const review = answerRun({ version: '0', ...question });
  const bytes = new TextEncoder().encode(text);
  for (let at = 0; at < bytes.length; at += piece) review.push(bytes.subarray(at, at + piece));
  const end = review.end('ab');
  if (!end.ok) throw new Error(end.issues[0]!.message);
  return end.value.report;
}

const words = (report: RunReport): string =>
  report.verdict.map((sentence) => sentenceText(sentence, 'metric')).join('\n');

describe('the review of a rehearsed run', () => {
  let report: RunReport;
  let text: string;
  beforeAll(() => {
    text = fileOf('arc_out@1.2 m:1.5 s, stall@3 m:3 s');
    report = reportOf(text, { job: { read, answer } });
  }, 60_000);

  it('keeps its schema, with no key that the schema does not know', () => {
    const written: unknown = JSON.parse(JSON.stringify(sentencesWritten(report, 'metric')));
    const { data, error } = runSchema.safeParse(written);
    expect(error).toBeUndefined();
    expect(data).toEqual(written);
  });

  it('is marked as a rehearsal and names what it was made from', () => {
    expect(report.inputs).toEqual({
      file_sha256: 'ab',
      job_revision: read.revision,
      logger_revision: null,
      program_version: '0',
      knowledge_id: answer.inputs.knowledge.id,
      rehearsal: true,
    });
    expect(words(report)).toContain('made up');
  });

  it('says where the arc was out and what to recut', () => {
    const [stretch] = report.stretches.filter(({ kind }) => kind === 'ungouged');
    expect(stretch!.from_mm).toBeCloseTo(1200, -1);
    expect(stretch!.to_mm - stretch!.from_mm).toBeGreaterThan(15);
    expect(words(report)).toMatch(
      /From 1\.\d{3} m to 1\.\d{3} m the arc was out 1\.\d s in pass 1: recut \d\d\.\d mm\./u,
    );
    const recut = stretch!.recut!;
    expect(recut.from_mm).toBeLessThan(stretch!.from_mm);
    expect(recut.to_mm).toBeGreaterThan(stretch!.to_mm);
    // the last of the passes went over it: about ten millimetres are missing, taken off in steps with a gauge stop, as nothing
    // was tried and nothing says how this shop cuts
    const { gauge, passes, passes_before_gauge: before } = recut;
    expect(passes).toBeGreaterThan(1);
    expect(before).toBeLessThan(passes);
    expect(gauge!.station_positions_mm.every((at) => at > stretch!.from_mm && at < stretch!.to_mm)).toBe(
      true,
    );
    const runs = gauge!.table.filter(({ action }) => action === 'run');
    expect(runs.length).toBeGreaterThan(2);
    // what is read deeper is run quicker
    const travels = runs.map(({ travel_mm_per_min: travel }) => travel!);
    expect(travels).toEqual([...travels].sort((a, b) => a - b));
    expect(recut.ramp_mm).toBeCloseTo(12.7, 1);
    expect(recut.chances!.reached).toBeGreaterThan(0.5);
    expect(words(report)).toMatch(
      /Run (?:one pass|\d passes) at \d+ mm\/min, gauge at one place, and set (?:one more pass|\d more passes) by the table of the recut: the depth is then reached with \d+ %/u,
    );
    // never told surer than it is
    expect(Math.max(recut.chances!.reached, recut.chances!.not_too_deep)).toBeLessThan(0.95);
  });

  it('says where the carriage stood, as deep', () => {
    const deep = report.stretches.filter(({ kind }) => kind === 'deep');
    expect(deep.some(({ from_mm, to_mm }) => from_mm < 3000 && to_mm > 2999)).toBe(true);
  });

  it('never tells a depth beyond the plate: there it sends to the far side', () => {
    const { thickness } = read.job.plate;
    const through = report.stretches.filter(({ depth_mm }) => (depth_mm ?? 0) >= thickness * 1000);
    expect(through.length).toBeGreaterThan(0);
    for (const { says } of through) {
      expect(sentenceText(says, 'metric')).toContain('through the plate of 32.0 mm: stop');
    }
    for (const { says, depth_mm } of report.stretches.filter(({ kind }) => kind === 'deep')) {
      if ((depth_mm ?? 0) < thickness * 1000) expect(sentenceText(says, 'metric')).toContain('may be');
    }
  });

  it('names likely causes and the next check beside the event', () => {
    const stall = report.events.find(({ kind }) => kind === 'stall')!;
    expect(stall.causes[0]!.cause).toBe('travel_slip');
    expect(stall.next_check?.ask).toBeTruthy();
  });

  it('says how much electrode was used against what was planned', () => {
    const { electrode_used_mm: used, electrode_planned_mm: planned } = report.totals;
    expect(used! / planned!).toBeCloseTo(1, 1);
  });

  it('comes out the same however the bytes are cut', () => {
    expect(reportOf(text, { job: { read, answer } }, 10_007)).toEqual(report);
  });
});

describe('a run that is not over', () => {
  it('plans the passes that remain from the depth now expected', () => {
    const report = reportOf(fileOf('', 1), { job: { read, answer } });
    const left = answer.plan!.passes.length - 1;
    expect(report.remaining!.passes.length).toBe(left);
    expect(report.stretches.filter(({ kind }) => kind === 'shallow')).toEqual([]);
    // run as planned, the rest stays about as planned: the plan's own gauge stop, and the last pass by its table
    const { remaining } = report;
    expect(remaining!.travel_mm_per_min).toBe(null);
    expect(remaining!.passes_to_run).toBe(left);
    expect(remaining!.meets).toBe(true);
    expect(remaining!.chances.reached).toBeGreaterThan(0.93);
    const [stop] = answer.plan!.gauge_stops;
    expect(remaining!.gauge).toMatchObject({ after_layer: stop!.after_layer, stations: stop!.stations });
    // what is read deeper is run quicker
    const travels = remaining!.gauge!.table.flatMap(({ travel_mm_per_min: travel }) => travel ?? []);
    expect(travels.length).toBeGreaterThan(3);
    expect(travels.at(-1)!).toBeGreaterThan(1.3 * travels[0]!);
    expect(words(report)).toContain(`1 of ${left + 1} planned passes run`);
  });
});

describe('a log of another job', () => {
  it('is said to be one', () => {
    const lines = ['time [s],voltage [V],current [A],travel [mm/min]'];
    for (let n = 0; n < 4000; n += 1) {
      const burns = n > 30;
      lines.push(
        `${n / 10},${burns ? 38 + Math.sin(n) : 70},${burns ? 400 + Math.sin(n) : 0},${burns ? 1500 : 0}`,
      );
    }
    const report = reportOf(lines.join('\n'), { job: { read, answer } });
    expect(report.fits_job).toBe(false);
    expect(words(report)).toMatch(/another job: the current is 400 A, the plan sets \d+ A/u);
  });

  it('is no such thing when it fits', () => {
    expect(reportOf(fileOf('', 1), { job: { read, answer } }).fits_job).toBe(true);
  });
});

describe('a log without a job', () => {
  it('gives no depth, no wanted depth and null for what it cannot tell', () => {
    const report = reportOf('time [s],voltage [V]\n0,75\n1,42\n2,42.5\n3,41.5\n4,42\n5,75\n');
    expect(report.depth).toEqual([]);
    expect(report.wanted).toBeNull();
    expect(report.totals).toMatchObject({
      mean_current_A: null,
      arc_energy_kJ: null,
      energy_by: null,
      travelled_mm: null,
      gouged_mm: null,
      electrode_used_mm: null,
    });
    expect(report.passes[0]).toMatchObject({ from_mm: null, to_mm: null });
  });

  it('is refused when it is no log', () => {
    for (const bad of ['', 'hello\n', 'a,b\n1,2\n3,4\n', '\u0000\u0001\u0002']) {
      const review = answerRun({ version: '0' });
      review.push(new TextEncoder().encode(bad));
      expect(review.end('').ok, bad).toBe(false);
    }
  });
});

it('plays a fault in the pass that is named, and says which passes there are', () => {
  const { job } = read;
  const { plan } = answer.basis!;
  const last = plan.passes.length;
  const asked = readFaults(`arc_out/${last}@1 m, short@2 m`, job, plan, 1);
  expect(asked.ok && asked.value.map(({ kind, pass, at }) => [kind, pass, at])).toEqual([
    ['arc_out', last, 1],
    ['short', 1, 2],
  ]);
  const wrong = readFaults(`arc_out/${last + 1}@1 m`, job, plan, 1);
  expect(wrong.ok ? '' : wrong.issues[0]!.message).toContain(
    `a pass of the plan behind /, from 1 to ${last}`,
  );
});
