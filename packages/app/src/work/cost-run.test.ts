import { readFileSync } from 'node:fs';
import { answerJob, type ReadJob, readJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { CostReply, CostRequest } from './cost-message.ts';
import { costRun } from './cost-run.ts';

function request(id: number, more = ''): CostRequest {
  const text = readFileSync(new URL('../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');
  const read = readJob(text + more);
  if (!read.ok) throw new Error('the demo job does not read');
  return { id, read: read.value, answer: answerJob({ job: read.value, version: 'test' }) };
}

/** Everything that was replied; a pause lets whatever waits go first. */
function run() {
  const replies: CostReply[] = [];
  const take = costRun({
    reply: (reply) => void replies.push(reply),
    pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
  });
  return { replies, take };
}

describe('costRun', () => {
  it('gives the cost first, then with the waits of the heat, then every change, then the end, plain enough to be sent', async () => {
    const { replies, take } = run();
    await take(request(3));
    expect(replies.map(({ is }) => is)).toEqual([
      'cost',
      'cost',
      'change',
      'change',
      'change',
      'change',
      'done',
    ]);
    expect(replies.every(({ id }) => id === 3)).toBe(true);
    expect(structuredClone(replies)).toEqual(replies);
  });

  it('leaves the changes of a request that a newer one overtakes', async () => {
    const { replies, take } = run();
    const [first, second] = [request(1), request(2)];
    await Promise.all([take(first), take(second)]);
    expect(replies.filter(({ id, is }) => id === 1 && is === 'change')).toEqual([]);
    expect(replies.filter(({ id, is }) => id === 2 && is === 'change')).toHaveLength(4);
    expect(replies.at(-1)).toEqual({ id: 2, is: 'done' });
  });

  it('tries no changes of a job without a plan', async () => {
    const { replies, take } = run();
    const { read, answer } = request(4);
    const { plan: _plan, ...rest } = answer;
    await take({ id: 4, read, answer: { ...rest, refusal: { summary: 'Too thin.', binding: [] } } });
    expect(replies).toEqual([
      { id: 4, is: 'cost', cost: { kind: 'no_plan', says: expect.stringContaining('Too thin.') as string } },
      { id: 4, is: 'done' },
    ]);
  });

  it('replies with a failure where the engine breaks', async () => {
    const { replies, take } = run();
    const { answer } = request(5);
    await take({ id: 5, read: {} as ReadJob, answer });
    expect(replies).toMatchObject([{ id: 5, is: 'failure' }]);
  });
});
