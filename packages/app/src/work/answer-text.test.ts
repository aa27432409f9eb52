import { readFileSync } from 'node:fs';
import { type ReadKit, readKit } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { answerText } from './answer-text.ts';

function kitOf(text: string): ReadKit {
  const read = readKit(text);
  if (!read.ok) throw new Error('the demo kit does not read');
  return read.value;
}

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

  it('plans with a kit, and without one', () => {
    const read = (name: string): string =>
      readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
    const text = read('penstock-seam');
    const kit = kitOf(read('yard-kit'));
    const reply = answerText({ id: 1, text, kit, units: 'inch' });
    expect(reply.is === 'answer' && reply.answer.supply?.kit.title).toBe('Penstock yard, bay 2');
    const timed =
      reply.is === 'answer' && reply.answer.supply?.checks.find(({ id }) => id.startsWith('travel_time'));
    expect(timed === false ? '' : timed?.ask).toMatch(/^Mark \S+ (?:ft|in) /u);
    expect(structuredClone(reply)).toEqual(reply);
    const without = answerText({ id: 2, text, units: 'metric' });
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
