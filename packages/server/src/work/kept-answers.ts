import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';

/** Something that is worked out for whoever asks for it, as long as anybody waits. */
type WorkOut<Asked, Answered> = (asked: Asked, signal: AbortSignal) => Promise<Answered>;

interface Underway<Answered> {
  readonly answer: Promise<Answered>;
  readonly stop: AbortController;
  waiting: number;
}

/**
 * Keeps the newest answers, and lets those who ask the same at the same time share one. A question holds everything
 * that its answer depends on (job and kit as read, seed, what the shop knows), so nothing kept ever becomes wrong.
 * What nobody waits for any longer is stopped.
 */
export function keptAnswers<Asked, Answered>(
  most: number,
  workOut: WorkOut<Asked, Answered>,
): WorkOut<Asked, Answered> {
  const kept = new Map<string, Answered>();
  const underway = new Map<string, Underway<Answered>>();

  const begin = (key: string, asked: Asked): Underway<Answered> => {
    const stop = new AbortController();
    const one: Underway<Answered> = { stop, waiting: 0, answer: workOut(asked, stop.signal) };
    underway.set(key, one);
    const forget = (): void => {
      if (underway.get(key) === one) underway.delete(key);
    };
    one.answer.then((answer) => {
      forget();
      kept.set(key, answer);
      const [oldest] = kept.keys();
      if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    }, forget);
    return one;
  };

  return async (asked, signal) => {
    signal.throwIfAborted();
    const key = keyOf(asked);
    const known = kept.get(key);
    if (known !== undefined) {
      kept.delete(key);
      kept.set(key, known);
      return known;
    }
    const one = underway.get(key) ?? begin(key, asked);
    one.waiting += 1;
    const leave = (): void => {
      one.waiting -= 1;
      if (one.waiting > 0) return;
      if (underway.get(key) === one) underway.delete(key);
      one.stop.abort(signal.reason);
    };
    signal.addEventListener('abort', leave, { once: true });
    try {
      return await Promise.race([one.answer, rejectedBy(signal)]);
    } finally {
      signal.removeEventListener('abort', leave);
    }
  };
}

function rejectedBy(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true });
  });
}

function keyOf(asked: unknown): string {
  return createHash('sha256').update(serialize(asked)).digest('hex');
}
