import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, readJob } from '@furrow/engine';
import { afterAll, describe, expect, it } from 'vitest';
import { EXAMPLES } from '../testing/test-server.ts';
import { openWork, type Work } from './open-work.ts';
import type { Question } from './worker.ts';

const outcome = readJob(readFileSync(join(EXAMPLES, 'defect-pocket.yaml'), 'utf8'));
if (!outcome.ok) throw new Error('the demo job cannot be read');
const read = outcome.value;
const question: Question = { read, kit: undefined, knowledge: undefined };
const waits = (): AbortSignal => new AbortController().signal;

const opened: Work[] = [];
const open = (bounds: Parameters<typeof openWork>[0]): Work => {
  const work = openWork(bounds);
  opened.push(work);
  return work;
};
afterAll(() => Promise.all(opened.map((work) => work.close())));

describe('openWork', () => {
  const work = open({ threads: 1, waiting: 1 });

  it('answers as the engine does, and leaves this thread to others meanwhile', async () => {
    let turns = 0;
    let done = false;
    const others = (async () => {
      for (; !done; turns++) await new Promise((resolve) => setImmediate(resolve));
    })();
    const answer = await work.answer(question, waits());
    done = true;
    await others;
    expect(turns).toBeGreaterThan(100);
    expect(answer).toEqual(answerJob({ job: read, version: PROGRAM_VERSION, kit: undefined }));
  });

  it('makes a paper of an answer, and says why another cannot be made', async () => {
    const answer = await work.answer(question, waits());
    const source = { subject: { read, answer }, options: { units: 'metric', paper: 'a4' } } as const;
    const section = await work.make('file', { source, name: 'section.svg' }, waits());
    expect(new TextDecoder().decode(section.bytes)).toContain('<svg');
    await expect(work.make('file', { source, name: 'bay.svg' }, waits())).rejects.toMatchObject({
      name: 'Refused',
      code: 'PAPER_WANTING',
    });
  });

  it('says so when it gives up after its time', async () => {
    await expect(open({ longest: 1 }).answer(question, waits())).rejects.toMatchObject({
      code: 'WORK_STOPPED',
      message: expect.stringContaining('given up after 0.001 s'),
    });
  });

  it('stops when nobody waits any longer, and refuses what is too much at once', async () => {
    const seeded = (seed: number): Question => ({
      ...question,
      read: { ...read, job: { ...read.job, plan: { ...read.job.plan, seed } } },
    });
    const gone = new AbortController();
    const running = work.answer(seeded(101), gone.signal);
    const waiting = work.answer(seeded(102), gone.signal);
    await expect(work.answer(seeded(103), waits())).rejects.toMatchObject({ code: 'WORK_BUSY' });
    gone.abort();
    for (const outcome of await Promise.allSettled([running, waiting])) {
      expect(outcome).toMatchObject({ status: 'rejected', reason: { code: 'WORK_STOPPED' } });
    }
    expect(await work.answer(question, waits())).toHaveProperty('inputs');
  });
});
