import { readFileSync } from 'node:fs';
import { type Answer, type ReadJob, readKit, sentenceText } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { readGood } from '../testing/index.ts';
import { type PlanRequest, planParts } from './plan.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

/** The one part of an answer. */
function answerOf(request: PlanRequest): Answer {
  const steps = [...planParts(request)];
  expect(structuredClone(steps)).toEqual(steps);
  expect(steps.map(({ is }) => is)).toEqual(['part']);
  return steps.flatMap((step) => (step.is === 'part' ? [step.part] : []))[0]!;
}

describe('planParts', () => {
  it('gives the whole answer of a job, plain enough to be sent from a worker', () => {
    const read = readGood(example('defect-pocket'));
    const answer = answerOf({ read });
    expect(answer.inputs.revision).toBe(read.revision);
    expect((answer.plan === undefined) !== (answer.refusal === undefined)).toBe(true);
  });

  it('plans with a kit, and without one', () => {
    const read = readGood(example('penstock-seam'));
    const kit = readKit(example('yard-kit'));
    if (!kit.ok) throw new Error('the demo kit does not read');
    const { supply } = answerOf({ read, kit: kit.value });
    expect(supply?.kit.title).toBe('Penstock yard, bay 2');
    const timed = supply?.checks.find(({ id }) => id.startsWith('travel_time'));
    expect(timed && sentenceText(timed.ask, 'inch')).toMatch(/^Mark \S+ (?:ft|in) /u);
    expect('supply' in answerOf({ read })).toBe(false);
  });

  it('breaks where the engine does, which is told as a failure', () => {
    expect(() => [...planParts({ read: {} as ReadJob })]).toThrow();
  });
});
