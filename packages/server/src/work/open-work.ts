import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Answer } from '@furrow/engine';
import { Piscina } from 'piscina';
import { Refused } from '../guard/refused.ts';
import { keptAnswers } from './kept-answers.ts';
import type * as worker from './worker.ts';
import type { Made, Question } from './worker.ts';

export type { Question } from './worker.ts';

type Makers = typeof worker;
type Asked<Name extends keyof Makers> = Parameters<Makers[Name]>[0];
type Given<Name extends keyof Makers> = Awaited<ReturnType<Makers[Name]>> extends Made<infer T> ? T : never;

/** Threads that do what takes long, so that everybody else is answered meanwhile. */
export interface Work {
  /** Plans, or hands out the answer to the same question asked before. */
  readonly answer: (question: Question, signal: AbortSignal) => Promise<Answer>;
  /** Makes something of an answer. It stops when the signal comes, as when nobody waits any longer. */
  readonly make: <Name extends Exclude<keyof Makers, 'answer'>>(
    name: Name,
    asked: Asked<Name>,
    signal: AbortSignal,
  ) => Promise<Given<Name>>;
  readonly close: () => Promise<void>;
}

/** Bounds on work; what is left out is as for a server at work. */
export interface WorkBounds {
  /** For one piece of work, waiting for its turn included [ms]. */
  readonly longest?: number;
  /** How many pieces of work may wait for their turn [-]. */
  readonly waiting?: number;
  readonly threads?: number;
}

const LONGEST_MILLISECONDS = 60_000;
/** Nothing that a background thread does takes longer, such as a day's log at a thousand rows a second. */
const BACKGROUND_LONGEST = 6 * 3_600_000;
const WAITING_MOST = 32;
const THREADS_MOST = 4;
const ANSWERS_KEPT = 32;
const IDLE_MILLISECONDS = 300_000;
const MEGABYTES_MOST = 1024;

/** Opens the threads; each starts when there is work for it. */
export function openWork({
  longest = LONGEST_MILLISECONDS,
  waiting = WAITING_MOST,
  threads = Math.max(1, Math.min(THREADS_MOST, availableParallelism() - 1)),
}: WorkBounds = {}): Work {
  const fromSource = import.meta.url.endsWith('.ts');
  const pool = new Piscina({
    filename: fileURLToPath(
      new URL(fromSource ? './worker-from-source.mjs' : './worker.js', import.meta.url),
    ),
    minThreads: 0,
    maxThreads: threads,
    idleTimeout: IDLE_MILLISECONDS,
    resourceLimits: { maxOldGenerationSizeMb: MEGABYTES_MOST },
    ...(fromSource && { execArgv: ['--conditions=furrow-source'] }),
  });

  let underway = 0;
  const run = async <Name extends keyof Makers>(
    name: Name,
    asked: Asked<Name>,
    gone: AbortSignal,
  ): Promise<Given<Name>> => {
    if (underway >= threads + waiting) throw tooMuch(waiting);
    underway += 1;
    const late = AbortSignal.timeout(longest);
    let outcome: Made<Given<Name>>;
    try {
      outcome = await pool.run(asked, { name, signal: AbortSignal.any([gone, late]) });
    } catch (error) {
      throw stopped(error, { gone, late, seconds: longest / 1000 });
    } finally {
      underway -= 1;
    }
    if ('made' in outcome) return outcome.made;
    const { code, message, more } = outcome.refused;
    throw new Refused(code, message, more);
  };

  const answer = keptAnswers<Question, Answer>(ANSWERS_KEPT, (question, signal) =>
    run('answer', question, signal),
  );
  return {
    answer: async (question, signal) => {
      try {
        return await answer(question, signal);
      } catch (error) {
        throw signal.aborted ? nobodyWaits() : error;
      }
    },
    make: run,
    close: () => pool.destroy(),
  };
}

/** A thread for what nobody waits for, such as a long log: one at a time, without haste. */
export function openBackgroundWork(): Work {
  return openWork({ threads: 1, longest: BACKGROUND_LONGEST });
}

function tooMuch(waiting: number): Refused {
  return new Refused(
    'WORK_BUSY',
    `Too much is being worked out already: ${waiting} others wait for their turn. Try again in a moment.`,
  );
}

function nobodyWaits(): Refused {
  return new Refused('WORK_STOPPED', 'This was stopped, as nobody waited for it any longer.');
}

interface Why {
  readonly gone: AbortSignal;
  readonly late: AbortSignal;
  readonly seconds: number;
}

/** Why work ended without a result, in words; a bug stays what it is. */
function stopped(error: unknown, { gone, late, seconds }: Why): unknown {
  if (gone.aborted) return nobodyWaits();
  if (late.aborted) {
    return new Refused(
      'WORK_STOPPED',
      `This was given up after ${seconds} s. Ask for less at once: fewer electrodes or currents to choose from, a wider ` +
        'tolerance, a simpler bay; nothing that is saved has changed.',
    );
  }
  if ((error as NodeJS.ErrnoException).code === 'ERR_WORKER_OUT_OF_MEMORY') {
    return new Refused(
      'WORK_STOPPED',
      `This was given up: it needed more than ${MEGABYTES_MOST} MB of memory.`,
    );
  }
  return error;
}
