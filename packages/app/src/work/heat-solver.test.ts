import type { Answer, ReadJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { HeatCommand, HeatReply } from './heat-message.ts';
import { createHeatSolver, type HeatWorker } from './heat-solver.ts';

const planned = { read: {} as ReadJob, answer: {} as Answer };

function desk() {
  const posted: HeatCommand[] = [];
  const replies: HeatReply[] = [];
  const workers: (HeatWorker & { ended: boolean })[] = [];
  const solver = createHeatSolver(
    () => {
      const worker = {
        onReply: () => {},
        onCrash: () => {},
        ended: false,
        post: (command: HeatCommand) => void posted.push(command),
        end: () => {
          worker.ended = true;
        },
      };
      workers.push(worker);
      return worker;
    },
    (reply) => void replies.push(reply),
  );
  return { solver, posted, replies, workers };
}

describe('createHeatSolver', () => {
  it('hands on replies to the newest request only', () => {
    const { solver, replies, workers } = desk();
    solver.ask({ id: 1, ...planned });
    solver.ask({ id: 2, ...planned });
    workers[0]!.onReply({ id: 1, is: 'nothing' });
    workers[0]!.onReply({ id: 2, is: 'nothing' });
    expect(replies.map(({ id }) => id)).toEqual([2]);
    expect(workers).toHaveLength(1);
  });

  it('tells the worker to stop, and is deaf to what was under way', () => {
    const { solver, posted, replies, workers } = desk();
    solver.ask({ id: 1, ...planned });
    solver.stop();
    workers[0]!.onReply({ id: 1, is: 'nothing' });
    expect(posted.at(-1)).toEqual({ is: 'stop' });
    expect(replies).toEqual([]);
  });

  it('tells of a crash, ends that worker and starts another for the next request', () => {
    const { solver, replies, workers } = desk();
    solver.ask({ id: 1, ...planned });
    workers[0]!.onCrash('out of memory');
    expect(replies).toEqual([{ id: 1, is: 'failure', message: 'out of memory' }]);
    solver.ask({ id: 2, ...planned });
    workers[1]!.onReply({ id: 2, is: 'nothing' });
    expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
    expect(replies.at(-1)).toEqual({ id: 2, is: 'nothing' });
  });

  it('is silent after it was closed', () => {
    const { solver, replies, workers } = desk();
    solver.ask({ id: 1, ...planned });
    solver.close();
    workers[0]!.onReply({ id: 1, is: 'nothing' });
    expect(replies).toEqual([]);
    expect(workers[0]!.ended).toBe(true);
  });
});
