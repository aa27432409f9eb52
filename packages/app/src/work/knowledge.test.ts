import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { knowledgeParts } from './knowledge.ts';

const TRIALS = readFileSync(new URL('../../../../examples/trials/demo-yard.yaml', import.meta.url), 'utf8');

describe('knowledgeParts', () => {
  it('gives what trials teach, plain enough to be sent from a worker', () => {
    const steps = [...knowledgeParts({ trials: TRIALS })];
    expect(steps).toMatchObject([{ is: 'part', part: { is: 'report' } }]);
    expect(structuredClone(steps)).toEqual(steps);
  });

  it('gives the issues of trials that cannot be read', () => {
    const steps = [...knowledgeParts({ trials: 'furrow_trials: [' })];
    expect(steps).toMatchObject([{ is: 'part', part: { is: 'issues', issues: [{}] } }]);
  });
});
