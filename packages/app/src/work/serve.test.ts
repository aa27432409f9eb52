import { describe, expect, it } from 'vitest';
import type { WorkCommand, WorkReply, WorkStep } from './protocol.ts';
import { serve } from './serve.ts';

const ask = (id: number, request = 'x'): WorkCommand<string> => ({ is: 'ask', id, request });

/** A worker of one job whose steps of progress take 50 ms each; `atPause` comes in at the pauses, one after the other. */
function worker(job: (request: string) => Iterable<WorkStep<string>>, atPause: (() => void)[] = []) {
  const replies: WorkReply<string>[] = [];
  const clock = { now: 0 };
  const take = serve(
    function* (request: string) {
      for (const step of job(request)) {
        if (step.is === 'progress') clock.now += 50;
        yield step;
      }
    },
    {
      reply: (reply) => void replies.push(reply),
      pause: async () => atPause.shift()?.(),
      now: () => clock.now,
    },
  );
  return { replies, take };
}

const part = (what: string): WorkStep<string> => ({ is: 'part', part: what });
const progress = (share: number): WorkStep<string> => ({ is: 'progress', share });

describe('serve', () => {
  it('replies with each step, then the end, under the id of the request', async () => {
    const { replies, take } = worker((request) => [progress(0.5), part(`half of ${request}`), part('rest')]);
    await take(ask(7, 'a seam'));
    expect(replies).toEqual([
      { id: 7, is: 'progress', share: 0.5 },
      { id: 7, is: 'part', part: 'half of a seam' },
      { id: 7, is: 'part', part: 'rest' },
      { id: 7, is: 'done' },
    ]);
  });

  it('passes over progress that comes fast', async () => {
    const replies: WorkReply<string>[] = [];
    let now = 0;
    const take = serve<string, string>(
      function* () {
        for (let step = 1; step <= 10; step += 1) {
          now += 15;
          yield progress(step / 10);
        }
      },
      { reply: (reply) => void replies.push(reply), pause: async () => {}, now: () => now },
    );
    await take(ask(1));
    expect(replies.map((reply) => reply.is === 'progress' && reply.share)).toEqual([0.3, 0.6, 0.9, false]);
  });

  it('hands on what a long part tells of itself, where time has passed', async () => {
    const replies: WorkReply<string>[] = [];
    let now = 0;
    const take = serve<string, string>(
      function* (_request, tell) {
        for (let step = 1; step <= 6; step += 1) {
          now += 25;
          tell(step / 10);
        }
        yield part('all');
      },
      { reply: (reply) => void replies.push(reply), pause: async () => {}, now: () => now },
    );
    await take(ask(3));
    expect(replies.map((reply) => (reply.is === 'progress' ? reply.share : reply.is))).toEqual([
      0.2,
      0.4,
      0.6,
      'part',
      'done',
    ]);
  });

  it('begins only the last of requests that came in together', async () => {
    const begun: string[] = [];
    const replies: WorkReply<string>[] = [];
    const take = serve<string, string>(
      function* (request) {
        begun.push(request);
        yield part(request);
      },
      {
        reply: (reply) => void replies.push(reply),
        pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
        now: () => 0,
      },
    );
    await Promise.all([take(ask(1, 'a')), take(ask(2, 'b')), take(ask(3, 'c'))]);
    expect(begun).toEqual(['c']);
    expect(replies.map(({ id, is }) => `${id} ${is}`)).toEqual(['3 part', '3 done']);
  });

  it.each([
    ['a part', part('first')],
    ['progress', progress(0.5)],
  ])('leaves a request behind %s for a newer one that came in', async (_, first) => {
    const begun: string[] = [];
    let other: Promise<void> = Promise.resolve();
    const { replies, take } = worker(
      function* (request) {
        begun.push(request);
        yield first;
        begun.push(`rest of ${request}`);
      },
      [
        () => {},
        () => {
          other = take(ask(2, 'b'));
        },
      ],
    );
    await take(ask(1, 'a'));
    await other;
    expect(begun).toEqual(['a', 'b', 'rest of b']);
    expect(replies.map(({ id, is }) => `${id} ${is}`)).toEqual([`1 ${first.is}`, `2 ${first.is}`, '2 done']);
  });

  it('stops when told to, without an end', async () => {
    const { replies, take } = worker(
      () => [part('first'), part('second')],
      [() => {}, () => void take({ is: 'stop' })],
    );
    await take(ask(1));
    expect(replies).toEqual([{ id: 1, is: 'part', part: 'first' }]);
  });

  it('replies with a failure where the job breaks, and takes the next request', async () => {
    const { replies, take } = worker((request) => {
      if (request === 'bad') throw new Error('no such metal');
      return [part(request)];
    });
    await take(ask(1, 'bad'));
    await take(ask(2, 'good'));
    expect(replies).toEqual([
      { id: 1, is: 'failure', message: 'no such metal' },
      { id: 2, is: 'part', part: 'good' },
      { id: 2, is: 'done' },
    ]);
  });
});
