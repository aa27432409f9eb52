import { answerCost, answerJob, tryCostChanges } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { exampleJob } from '../sample-plan.test-data.ts';
import { renderCostText } from './render-cost-text.ts';

const read = exampleJob('penstock-seam');
const answer = answerJob({ job: read, version: '0.1.0' });
const cost = answerCost(read, answer);
const subject = { read, inputs: answer.inputs };
if (cost.kind !== 'cost') throw new Error('the demo job has a plan');
const changes = [...tryCostChanges(read, answer, cost)];

describe('the text of a cost', () => {
  it.each(['metric', 'inch'] as const)('stays within a hundred columns in %s and has no hole', (units) => {
    const text = renderCostText(cost, changes, subject, units);
    expect(Math.max(...text.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(100);
    expect(text).not.toMatch(/NaN|undefined|Infinity/u);
  });

  it('tells both percentiles, every step, every other way and every change', () => {
    const text = renderCostText(cost, changes, subject, 'metric');
    for (const told of [
      'Nine in ten of no more',
      'Refill welding',
      'Chipping',
      'A hired compressor',
      'What a larger groove than planned adds',
      'Local codes and licensed practice govern',
    ]) {
      expect(text).toContain(told);
    }
  });

  it('lists what it rests on as the quote does: defaults with why, and what is not in it', () => {
    const text = renderCostText(cost, changes, subject, 'metric').replace(/\s+/gu, ' ');
    const rests = answer.inputs.defaults_used.filter(({ path }) => /^(?:rates|after|reweld)\b/u.test(path));
    expect(rests.length).toBeGreaterThan(5);
    for (const { why } of rests) expect(text).toContain(why);
    expect(text).toContain('profit, taxes, insurance');
    expect(text).toMatch(/A bad day .*durations of the kinds of/u);
  });

  it('uses the units of the shop throughout', () => {
    const text = renderCostText(cost, changes, subject, 'inch');
    expect(text).toContain('By the foot');
    // what stood in for the job is told as a file has it
    expect(text.split('Taken because')[0]).not.toMatch(/\d kg\b(?!\/m3)|\d mm²/u);
  });

  it('says why there is none without a plan', () => {
    const text = renderCostText({ kind: 'no_plan', says: 'Nothing to reckon.' }, [], subject, 'metric');
    expect(text).toContain('Nothing to reckon.');
  });
});
