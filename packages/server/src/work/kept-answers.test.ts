import { describe, expect, it } from 'vitest';
import { keptAnswers } from './kept-answers.ts';

/** A question, and the work on it that a test ends when it likes. */
function desk(most = 2) {
  const works: { asked: unknown; signal: AbortSignal; answer: (text: string) => void; fail: () => void }[] =
    [];
  const ask = keptAnswers<unknown, string>(
    most,
    (asked, signal) =>
      new Promise((answer, reject) => {
        works.push({ asked, signal, answer, fail: () => reject(new Error('broken')) });
        signal.addEventListener('abort', () => reject(signal.reason));
      }),
  );
  return { ask, works };
}

const waits = (): AbortSignal => new AbortController().signal;

describe('keptAnswers', () => {
  it('works the same question out once, whether asked again later or at the same time', async () => {
    const { ask, works } = desk();
    const both = [ask({ job: 'a', seed: 1 }, waits()), ask({ job: 'a', seed: 1 }, waits())];
    expect(works).toHaveLength(1);
    works[0]?.answer('plan');
    expect(await Promise.all(both)).toEqual(['plan', 'plan']);
    expect(await ask({ job: 'a', seed: 1 }, waits())).toBe('plan');
    expect(works).toHaveLength(1);
  });

  it('tells questions apart by everything in them', () => {
    const { ask, works } = desk();
    const questions = [
      { a: 1 },
      { a: 2 },
      { a: Number.POSITIVE_INFINITY },
      { a: null },
      { a: undefined },
      {},
    ];
    for (const question of questions) void ask(question, waits());
    expect(works.map(({ asked }) => asked)).toEqual(questions);
  });

  it('keeps the answers that were used last', async () => {
    const { ask, works } = desk(2);
    const use = async (question: string): Promise<void> => {
      const answer = ask(question, waits());
      works.at(-1)?.answer(question);
      await answer;
    };
    await use('a');
    await use('b');
    await use('a');
    await use('c');
    expect(works.map(({ asked }) => asked)).toEqual(['a', 'b', 'c']);
    await use('a');
    expect(works).toHaveLength(3);
    await use('b');
    expect(works).toHaveLength(4);
  });

  it('goes on while anybody waits, and stops when nobody does', async () => {
    const { ask, works } = desk();
    const [one, other] = [new AbortController(), new AbortController()];
    const first = ask('a', one.signal);
    const second = ask('a', other.signal);
    one.abort();
    await expect(first).rejects.toThrow();
    expect(works[0]?.signal.aborted).toBe(false);
    other.abort();
    await expect(second).rejects.toThrow();
    expect(works[0]?.signal.aborted).toBe(true);
    const again = ask('a', waits());
    expect(works).toHaveLength(2);
    works[1]?.answer('plan');
    expect(await again).toBe('plan');
  });

  it('does not keep a failure', async () => {
    const { ask, works } = desk();
    const failing = ask('a', waits());
    works[0]?.fail();
    await expect(failing).rejects.toThrow('broken');
    const again = ask('a', waits());
    works[1]?.answer('plan');
    expect(await again).toBe('plan');
  });

  it('does not begin for somebody who has gone', async () => {
    const { ask, works } = desk();
    await expect(ask('a', AbortSignal.abort())).rejects.toThrow();
    expect(works).toEqual([]);
  });
});
