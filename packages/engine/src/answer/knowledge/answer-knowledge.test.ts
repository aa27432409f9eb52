import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../job/index.ts';
import { knowledgeOf, type ReadTrials, readTrials } from '../../learn/index.ts';
import { knowledgeReportSchema } from '../../result/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { answerKnowledge } from './answer-knowledge.ts';
import { beliefOfJob } from './belief-of-job.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
const trials = (text: string): ReadTrials => {
  const outcome = readTrials(text);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};
const DEMO = trials(example('trials/demo-yard'));
const report = answerKnowledge(DEMO);
const outcome = readJob(example('penstock-seam'));
if (!outcome.ok) throw new Error('the example is not in order');
const JOB = outcome.value;

describe('what the demo shop knows', () => {
  it('is of the shape that is published', () => {
    expect(knowledgeReportSchema.safeParse(report).error).toBeUndefined();
  });

  it('counts its entries and names its file', () => {
    expect(report.knowledge).toEqual({
      id: `demo-yard-${DEMO.revision.slice(0, 12)}`,
      trials: 4,
      jobs: 6,
      date: '2026-04-29',
      invented: true,
    });
    expect(report.families).toMatchObject([{ trials: 4, jobs: 6, readings: 47, metal: 'carbon_steel' }]);
  });

  it('has four spreads with intervals, and says where each comes from', () => {
    const [{ levels, doubt }] = report.families as [(typeof report.families)[number]];
    for (const { p05, p50, p95, from } of Object.values(levels)) {
      expect(p05).toBeLessThan(p50);
      expect(p50).toBeLessThan(p95);
      expect(from).toMatch(/judgement|memory/);
    }
    expect(levels.job.p50).toBeGreaterThan(0.03);
    expect(levels.job.p50).toBeLessThan(0.09);
    expect(doubt).toBeLessThan(0.05);
  });

  it('scores a prediction to each entry, and keeps what was corrected or taken out', () => {
    expect(report.scores.predictions).toBe(10);
    expect(report.scores.inside_90).toBe(report.scores.entries.filter(({ inside }) => inside).length);
    expect(report.drift.since).toBeNull();
    expect(report.taken_out).toEqual([{ entry: 't-00', date: '2026-01-09', reason: expect.any(String) }]);
    expect(report.corrected).toHaveLength(1);
  });

  it('names a reading that does not fit, and keeps it', () => {
    const wrong = answerKnowledge(
      trials(example('trials/demo-yard').replace('at: 2.1 m, depth: 1', 'at: 2.1 m, depth: 2')),
    );
    expect(wrong.outliers).toMatchObject([{ entry: 'j-117', what: expect.stringContaining('2100 mm') }]);
    expect(wrong.families[0]!.readings).toBe(47);
    expect(report.outliers).toEqual([]);
  });
});

describe('a plan made with it', () => {
  it('names it, and is the same for the same knowledge', () => {
    const ask = () => answerJob({ job: JOB, version: 'x', knowledge: knowledgeOf(DEMO) });
    const answer = ask();
    expect(answer.inputs.knowledge).toEqual(report.knowledge);
    expect(answer.inputs.posterior_id).toContain(report.knowledge.id);
    expect(JSON.stringify(ask())).toBe(JSON.stringify(answer));
  });

  it('holds electrodes that were tried surer than others, and goes by the least sure', () => {
    const belief = beliefOfJob(JOB.job, knowledgeOf(DEMO));
    const doubt = ({ depth }: typeof belief): number =>
      depth.reduce((sum, { weight, covariance }) => sum + weight * covariance[0]![0]!, 0);
    const each = belief.byElectrode!.map(
      ({ electrode, belief: own }) => [electrode.diameter, doubt(own)] as const,
    );
    const tried = each.find(([diameter]) => Math.abs(diameter - 0.0127) < 1e-6)![1];
    const large = each.find(([diameter]) => diameter > 0.015)![1];
    expect(large).toBeGreaterThan(2 * tried);
    expect(doubt(belief)).toBe(Math.max(...each.map(([, value]) => value)));
  });
});
