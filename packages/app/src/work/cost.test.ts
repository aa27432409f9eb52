import { readFileSync } from 'node:fs';
import { answerJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { readGood } from '../testing/index.ts';
import { type CostRequest, costParts } from './cost.ts';

const TEXT = readFileSync(new URL('../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');

function request(): CostRequest {
  const read = readGood(TEXT);
  return { read, answer: answerJob({ job: read, version: 'test' }) };
}

describe('costParts', () => {
  it('gives the cost first, then with the waits of the heat, then every change, plain enough to be sent', () => {
    const steps = [...costParts(request())];
    expect(steps.map((step) => (step.is === 'part' ? step.part.is : step.is))).toEqual([
      'cost',
      'cost',
      'change',
      'change',
      'change',
      'change',
    ]);
    expect(structuredClone(steps)).toEqual(steps);
  });

  it('tries no changes of a job without a plan', () => {
    const { read, answer } = request();
    const { plan: _plan, basis: _basis, ...rest } = answer;
    const refused = { ...rest, refusal: { summary: 'Too thin.', binding: [] } };
    const says = expect.stringContaining('Too thin.') as string;
    expect([...costParts({ read, answer: refused })]).toEqual([
      { is: 'part', part: { is: 'cost', cost: { kind: 'no_plan', says } } },
    ]);
  });
});
