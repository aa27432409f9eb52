import type { Answer, HeatAnswer, ReadJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { HeatCommand, HeatReply } from './heat-message.ts';
import { type HeatRunTools, heatRun } from './heat-run.ts';

const READ = {} as ReadJob;
const ANSWER = {} as Answer;
const request = (id: number): HeatCommand => ({ is: 'solve', id, read: READ, answer: ANSWER });

interface Desk {
  readonly replies: HeatReply[];
  readonly command: (command: HeatCommand) => Promise<void>;
  /** What comes in at each pause. */
  readonly atPause: (() => void)[];
}

/** A solver of four steps, each as long as a slice. */
function desk(solve?: HeatRunTools['solve']): Desk {
  const replies: HeatReply[] = [];
  const atPause: (() => void)[] = [];
  let clock = 0;
  const command = heatRun({
    *solve(_read, _answer, { quality }) {
      for (const share of [0.25, 0.5, 0.75]) {
        clock += 50;
        yield share;
      }
      return { report: { quality } } as HeatAnswer;
    },
    reply: (reply) => void replies.push(reply),
    pause: async () => atPause.shift()?.(),
    now: () => clock,
    ...(solve === undefined ? {} : { solve }),
  });
  return { replies, command, atPause };
}

const told = (replies: readonly HeatReply[]): string[] =>
  replies.map((reply) =>
    'quality' in reply ? `${reply.id} ${reply.is} ${reply.quality}` : `${reply.id} ${reply.is}`,
  );

describe('heatRun', () => {
  it('gives a quick look, then the refined answer, with progress in between', async () => {
    const { command, replies } = desk();
    await command(request(1));
    expect(told(replies).filter((what) => what.includes('answer'))).toEqual([
      '1 answer quick',
      '1 answer refined',
    ]);
    const shares = replies.flatMap((reply) => (reply.is === 'progress' ? [reply.share] : []));
    expect(shares).toEqual([0.25, 0.5, 0.75, 0.25, 0.5, 0.75]);
    expect(replies.find((reply) => reply.is === 'answer')).toMatchObject({ took_ms: 150 });
  });

  it('leaves a request for a newer one that came in meanwhile', async () => {
    const { command, replies, atPause } = desk();
    let other: Promise<void> = Promise.resolve();
    atPause.push(() => {
      other = command(request(2));
    });
    await command(request(1));
    await other;
    expect(told(replies)[0]).toBe('1 progress quick');
    expect(told(replies).filter((what) => what.startsWith('1 ')).length).toBe(1);
    expect(told(replies).at(-1)).toBe('2 answer refined');
  });

  it('stops when told to, without an answer', async () => {
    const { command, replies, atPause } = desk();
    atPause.push(() => void command({ is: 'stop' }));
    await command(request(1));
    expect(told(replies)).toEqual(['1 progress quick']);
  });

  it('says that there is nothing to heat, and that the solver broke', async () => {
    const none = desk(function* () {
      yield 0;
      return null;
    });
    await none.command(request(3));
    expect(told(none.replies)).toEqual(['3 nothing']);
    const broken = desk(function* () {
      yield 0;
      throw new Error('no such metal');
    });
    await broken.command(request(4));
    expect(broken.replies).toEqual([{ id: 4, is: 'failure', message: 'no such metal' }]);
  });
});
