import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerText } from './answer-text.ts';

describe('answerText', () => {
  it('gives the whole answer of a job, plain enough to be sent from a worker', () => {
    const reply = answerText({
      id: 7,
      text: readFileSync(new URL('../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8'),
      units: 'metric',
    });
    expect(reply.id).toBe(7);
    if (reply.is !== 'answer') throw new Error(`no answer but ${reply.is}`);
    expect(reply.answer.inputs.revision).toBe(reply.read.revision);
    expect((reply.answer.plan === undefined) !== (reply.answer.refusal === undefined)).toBe(true);
    expect(structuredClone(reply)).toEqual(reply);
  });

  it('plans with a kit, and without one that cannot be read', () => {
    const read = (name: string): string =>
      readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
    const text = read('penstock-seam');
    const reply = answerText({ id: 1, text, kit: read('yard-kit'), units: 'inch' });
    expect(reply.is === 'answer' && reply.answer.supply?.kit.title).toBe('Penstock yard, bay 2');
    const timed =
      reply.is === 'answer' && reply.answer.supply?.checks.find(({ id }) => id.startsWith('travel_time'));
    expect(timed === false ? '' : timed?.ask).toMatch(/^Mark \S+ (?:ft|in) /u);
    expect(structuredClone(reply)).toEqual(reply);
    const without = answerText({ id: 2, text, kit: 'furrow_kit: 1', units: 'metric' });
    expect(without.is === 'answer' && 'supply' in without.answer).toBe(false);
  });

  it('gives the issues of a job that cannot be read', () => {
    const reply = answerText({ id: 8, text: 'furrow: 1\ntitle: [', units: 'metric' });
    expect(reply).toMatchObject({ id: 8, is: 'issues' });
    expect(reply.is === 'issues' && reply.issues[0]?.code).toBe('JOB_SYNTAX');
  });

  it('replies with a failure where the engine breaks', () => {
    const text = { length: 3 } as unknown as string;
    expect(answerText({ id: 9, text, units: 'metric' })).toMatchObject({ id: 9, is: 'failure' });
  });
});
