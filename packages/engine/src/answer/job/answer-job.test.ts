import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import { type Answer, type Plan, writtenAnswer } from '../../result/index.ts';
import { answerJob } from './answer-job.ts';

const EXAMPLES = ['penstock-seam', 'casting-wash', 'defect-pocket'] as const;

function textOf(name: string): string {
  return readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
}

function read(text: string): ReadJob {
  const outcome = readJob(text);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

const answers = new Map<string, Answer>(
  EXAMPLES.map((name) => [name, answerJob({ job: read(textOf(name)), version: '1.2.3' })]),
);
/** The same seam with a source that no electrode of the kit can be run with. */
const refused = answerJob({
  job: read(
    textOf('penstock-seam').replace('{ least: 200 A, most: 1200 A }', '{ least: 100 A, most: 300 A }'),
  ),
  version: '1.2.3',
});

/** Fails on the first number that is not finite and on any value that JSON cannot carry. */
function expectPlainData(value: unknown, path: string): void {
  if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
  else if (Array.isArray(value)) {
    for (const [index, item] of value.entries()) expectPlainData(item, `${path}[${index}]`);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) expectPlainData(item, `${path}.${key}`);
  } else expect(['string', 'boolean', 'object'], path).toContain(typeof value);
}

const number = expect.any(Number);
const band = { p05: number, p50: number, p95: number };
const spread = { p50: number, p90: number };

function expectContract(plan: Plan): void {
  // What other programs rely on; more keys may come, none of these may go.
  expect(plan).toMatchObject({
    electrode_diameter_mm: number,
    passes: expect.any(Array),
    floor_depth_mm: band,
    width_mm: band,
    root_radius_mm: number,
    ligament_mm: { p05: number, p50: number },
    assurance: { depth_reached: number, not_too_deep: number, ligament_kept: number },
    arc_time_s: spread,
    electrodes_used: spread,
    removed_mm3_per_mm: number,
    gauge_stops: expect.any(Array),
  });
  expect(plan.passes.length).toBeGreaterThan(0);
  for (const pass of plan.passes) {
    expect(pass).toMatchObject({
      layer: number,
      offset_mm: number,
      current_A: number,
      arc_voltage_V: number,
      push_angle_deg: number,
      travel_mm_per_min: number,
      depth_mm: band,
      dwell_s: number,
    });
  }
  for (const { p05, p50, p95 } of [plan.floor_depth_mm, plan.width_mm, plan.least_depth_mm]) {
    expect(p05).toBeLessThanOrEqual(p50);
    expect(p50).toBeLessThanOrEqual(p95);
  }
  for (const { p50, p90 } of [plan.arc_time_s, plan.job_time_s, plan.cost, plan.electrodes_used]) {
    expect(p50).toBeLessThanOrEqual(p90);
  }
  expect(plan.ligament_mm.p05).toBeLessThanOrEqual(plan.ligament_mm.p50);
  expect(plan.job_time_s.p50).toBeGreaterThan(plan.arc_time_s.p50);
  for (const share of Object.values(plan.assurance)) {
    expect(share).toBeGreaterThanOrEqual(0);
    expect(share).toBeLessThanOrEqual(1);
  }
}

describe('An answer', () => {
  it.each(EXAMPLES)('has every key of the contract: %s', (name) => {
    const answer = answers.get(name)!;
    expect(answer.refusal).toBeUndefined();
    expectContract(answer.plan!);
    for (const plan of answer.alternatives) expectContract(plan);
  });

  it.each(EXAMPLES)('is plain data, all numbers finite: %s', (name) => {
    const answer = writtenAnswer(answers.get(name)!, 'metric');
    expectPlainData(answer, 'answer');
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });

  it.each(EXAMPLES)('is the same bytes again: %s', (name) => {
    expect(JSON.stringify(answerJob({ job: read(textOf(name)), version: '1.2.3' }))).toBe(
      JSON.stringify(answers.get(name)),
    );
  });

  it('names what it was computed from', () => {
    const job = read(textOf('penstock-seam'));
    const { inputs } = answers.get('penstock-seam')!;
    expect(inputs).toEqual({
      revision: job.revision,
      program_version: '1.2.3',
      seed: job.job.plan.seed,
      posterior_id: 'published-2/carbon_steel/flat',
      knowledge: { id: 'published-2', trials: 0, jobs: 0, date: null },
      defaults_used: job.defaultsUsed,
    });
    expect(inputs.revision).toMatch(/^[0-9a-f]{64}$/);
    expect(inputs.defaults_used.length).toBeGreaterThan(0);
  });

  it('has either a plan or a refusal with what binds', () => {
    expect(refused.plan).toBeUndefined();
    expect(refused.alternatives).toEqual([]);
    expect(refused.refusal!.binding.length).toBeGreaterThan(0);
    for (const binding of refused.refusal!.binding) {
      expect(binding).toEqual({
        constraint: expect.any(String),
        demand: number,
        limit: number,
        unit: expect.any(String),
        remedy: expect.any(String),
        frees: expect.any(Boolean),
      });
    }
    expectPlainData(refused, 'refused');
  });

  it('tells where it reaches beyond its rows', () => {
    const overhead = answerJob({
      job: read(textOf('penstock-seam').replace('position: flat', 'position: overhead')),
      version: '1.2.3',
    });
    expect(overhead.inputs.posterior_id).toBe('published-2/carbon_steel/overhead');
    expect(overhead.cautions.some((caution) => caution.includes('overhead'))).toBe(true);
    expect(answers.get('penstock-seam')!.cautions.some((caution) => caution.includes('overhead'))).toBe(
      false,
    );
  });

  it('gives each limit of a plan a source and a verdict', () => {
    for (const limit of answers.get('penstock-seam')!.plan!.limits) {
      expect(limit.source.text.length).toBeGreaterThan(5);
      expect(['confirmed', 'memory', 'derived', 'common practice', 'job file']).toContain(
        limit.source.provenance,
      );
      expect(['holds', 'tight', 'fails']).toContain(limit.verdict);
    }
  });
});

it('looks at every current before it says that nothing was found', () => {
  // the greatest current wants to travel faster than the carriage; a lower one makes it in two layers
  const { plan } = answerJob({
    job: read(textOf('penstock-seam').replace(/^rates:/mu, 'plan: { layers_most: 2 }\n\nrates:')),
    version: '1.2.3',
  });
  expect(plan?.layers).toBe(2);
});
