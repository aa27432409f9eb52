import { answerCost, answerJob, tryCostChanges } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { exampleJob } from '../sample-plan.test-data.ts';
import { renderCostText } from './render-cost-text.ts';

const read = exampleJob('penstock-seam');
const cost = answerCost(read, answerJob({ job: read, version: '0.1.0' }));
if (cost.kind !== 'cost') throw new Error('the demo job has a plan');
const changes = [...tryCostChanges(read, cost, '0.1.0')];

describe('the text of a cost', () => {
  it.each(['metric', 'inch'] as const)('stays within a hundred columns in %s and has no hole', (units) => {
    const text = renderCostText(cost, changes, read.job.title, units);
    expect(Math.max(...text.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(100);
    expect(text).not.toMatch(/NaN|undefined|Infinity/u);
  });

  it('tells both percentiles, every step, every other way and every change', () => {
    const text = renderCostText(cost, changes, read.job.title, 'metric');
    for (const told of [
      'Nine in ten of no more',
      'Refill welding',
      'Chipping',
      'A hired compressor',
      'What a larger groove takes more',
      'Local codes and licensed practice govern',
    ]) {
      expect(text).toContain(told);
    }
  });

  it('uses the units of the shop throughout', () => {
    const text = renderCostText(cost, changes, read.job.title, 'inch');
    expect(text).toContain('By the foot');
    expect(text).not.toMatch(/\d kg\b(?!\/m3)|\d mm²/u);
  });

  it('says why there is none without a plan', () => {
    const text = renderCostText({ kind: 'no_plan', says: 'Nothing to reckon.' }, [], 'Job', 'metric');
    expect(text).toContain('Nothing to reckon.');
  });
});
