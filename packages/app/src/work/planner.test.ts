import { describe, expect, it } from 'vitest';
import type { PlanReply, PlanRequest } from './message.ts';
import { createPlanner, type PlanWorker } from './planner.ts';

interface Bench {
  readonly posted: PlanRequest[];
  readonly replies: PlanReply[];
  readonly workers: (PlanWorker & { ended: boolean })[];
  readonly planner: ReturnType<typeof createPlanner>;
  readonly reply: (id: number) => void;
}

function bench(): Bench {
  const posted: PlanRequest[] = [];
  const replies: PlanReply[] = [];
  const workers: (PlanWorker & { ended: boolean })[] = [];
  const start = (): PlanWorker => {
    const worker = {
      onReply: () => {},
      onCrash: () => {},
      ended: false,
      post: (request: PlanRequest) => void posted.push(request),
      end: () => {
        worker.ended = true;
      },
    };
    workers.push(worker);
    return worker;
  };
  const planner = createPlanner(start, (reply) => replies.push(reply));
  const reply = (id: number): void => workers.at(-1)!.onReply({ id, is: 'issues', issues: [] });
  return { posted, replies, workers, planner, reply };
}

const ids = (list: readonly { readonly id: number }[]): number[] => list.map(({ id }) => id);

describe('createPlanner', () => {
  it('hands one request after the other to one worker', () => {
    const { planner, posted, replies, workers, reply } = bench();
    planner.ask({ id: 1, text: 'a', units: 'metric' });
    reply(1);
    planner.ask({ id: 2, text: 'b', units: 'metric' });
    reply(2);
    expect(ids(posted)).toEqual([1, 2]);
    expect(ids(replies)).toEqual([1, 2]);
    expect(workers).toHaveLength(1);
  });

  it('plans only the newest of the requests that came in while it was busy', () => {
    const { planner, posted, replies, reply } = bench();
    for (const id of [1, 2, 3, 4]) planner.ask({ id, text: String(id), units: 'metric' });
    reply(1);
    reply(4);
    expect(ids(posted)).toEqual([1, 4]);
    expect(ids(replies)).toEqual([4]);
  });

  it('tells of a crash, ends that worker and starts another one for the next request', () => {
    const { planner, posted, replies, workers, reply } = bench();
    planner.ask({ id: 1, text: 'a', units: 'metric' });
    workers[0]!.onCrash('out of memory');
    expect(replies).toEqual([{ id: 1, is: 'failure', message: 'out of memory' }]);
    planner.ask({ id: 2, text: 'b', units: 'metric' });
    reply(2);
    expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
    expect(ids(posted)).toEqual([1, 2]);
    expect(ids(replies)).toEqual([1, 2]);
  });

  it('goes on with the newest request after a crash without telling of the overtaken one', () => {
    const { planner, posted, replies, workers, reply } = bench();
    planner.ask({ id: 1, text: 'a', units: 'metric' });
    planner.ask({ id: 2, text: 'b', units: 'metric' });
    workers[0]!.onCrash('out of memory');
    reply(2);
    expect(ids(posted)).toEqual([1, 2]);
    expect(ids(replies)).toEqual([2]);
  });

  it('is silent after it was closed', () => {
    const { planner, replies, workers, reply } = bench();
    planner.ask({ id: 1, text: 'a', units: 'metric' });
    planner.close();
    reply(1);
    expect(replies).toEqual([]);
    expect(workers[0]!.ended).toBe(true);
  });
});
