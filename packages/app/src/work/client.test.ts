import { describe, expect, it } from 'vitest';
import { FakeWorker } from '../testing/index.ts';
import { createClient } from './client.ts';
import type { WorkReply } from './protocol.ts';

function page() {
  const replies: WorkReply<string>[] = [];
  const workers: FakeWorker<string, string>[] = [];
  const client = createClient<string, string>(
    () => {
      workers.push(new FakeWorker());
      return workers.at(-1)!;
    },
    (reply) => void replies.push(reply),
  );
  return { client, replies, workers };
}

const DONE = { is: 'done' } as const;
const FAILURE = { is: 'failure', message: 'out of memory' } as const;

describe('createClient', () => {
  it('asks one worker, started with the first request, and hands on its replies', () => {
    const { client, replies, workers } = page();
    expect(workers).toEqual([]);
    client.ask('a');
    workers[0]!.reply({ is: 'progress', share: 0.5 });
    workers[0]!.part('answer to a');
    workers[0]!.reply(DONE);
    client.ask('b');
    workers[0]!.reply(FAILURE);
    expect(workers.map(({ requests }) => requests)).toEqual([['a', 'b']]);
    expect(replies).toEqual([
      { id: 1, is: 'progress', share: 0.5 },
      { id: 1, is: 'part', part: 'answer to a' },
      { id: 1, ...DONE },
      { id: 2, ...FAILURE },
    ]);
  });

  it('hands on replies to the newest request alone', () => {
    const { client, replies, workers } = page();
    client.ask('a');
    client.ask('b');
    workers[0]!.reply(DONE, 1);
    workers[0]!.reply(DONE, 2);
    expect(replies).toEqual([{ id: 2, ...DONE }]);
  });

  it('tells the worker to stop, and is deaf to what was under way', () => {
    const { client, replies, workers } = page();
    client.stop();
    client.ask('a');
    expect(workers[0]!.stopped).toBe(false);
    client.stop();
    workers[0]!.part('answer to a');
    workers[0]!.onCrash('out of memory');
    expect(workers[0]!.stopped).toBe(true);
    expect(replies).toEqual([]);
  });

  it('tells of a crash, ends that worker and starts another for the next request', () => {
    const { client, replies, workers } = page();
    client.ask('a');
    workers[0]!.onCrash('out of memory');
    client.ask('b');
    workers[1]!.part('answer to b');
    expect(replies).toEqual([
      { id: 1, ...FAILURE },
      { id: 2, is: 'part', part: 'answer to b' },
    ]);
    expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
  });

  it('tells nobody of a crash while nothing is under way, and blames no request that ended', () => {
    const { client, replies, workers } = page();
    client.ask('a');
    workers[0]!.reply(DONE);
    client.ask('b');
    workers[0]!.reply(DONE);
    workers[0]!.onCrash('out of memory');
    expect(replies.map(({ is }) => is)).toEqual(['done', 'done']);
    client.ask('c');
    workers[1]!.reply(DONE);
    client.ask('d');
    workers[1]!.onCrash('out of memory');
    expect(workers).toHaveLength(2);
    expect(replies.at(-1)).toEqual({ id: 4, ...FAILURE });
  });

  it('asks anew after a crash that may be due to an overtaken request, once', () => {
    const { client, replies, workers } = page();
    client.ask('a');
    client.ask('b');
    workers[0]!.onCrash('out of memory');
    expect(workers[1]!.requests).toEqual(['b']);
    expect(replies).toEqual([]);
    workers[1]!.onCrash('out of memory');
    expect(workers).toHaveLength(2);
    expect(replies).toEqual([{ id: 2, ...FAILURE }]);
  });

  it('tells of a crash of the newest request, begun while an older one was under way', () => {
    const { client, replies, workers } = page();
    client.ask('a');
    client.ask('b');
    workers[0]!.part('first part of b');
    workers[0]!.onCrash('out of memory');
    expect(workers).toHaveLength(1);
    expect(replies.at(-1)).toEqual({ id: 2, ...FAILURE });
  });

  it('is silent after it was closed', () => {
    const { client, replies, workers } = page();
    client.ask('a');
    client.close();
    workers[0]!.part('answer to a');
    workers[0]!.onCrash('too late');
    expect(replies).toEqual([]);
    expect(workers[0]!.ended).toBe(true);
  });
});
