import { randomUUID } from 'node:crypto';
import { PROGRAM_VERSION } from '@furrow/contract';
import { type Originals, type Store, type StoredRun, StoreFailure } from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import type { Work } from '../work/open-work.ts';
import { questionOf } from './run-question.ts';

/** What reviewing runs in the background needs. */
export interface ReviewerParts {
  readonly store: Store;
  readonly originals: Originals;
  /** Threads for what nobody waits for. */
  readonly background: Work;
  /** Is told of what went wrong. */
  readonly log: (message: string) => void;
  /** Version of the program that reviews; another one reviews every run again. */
  readonly version?: string;
}

/** Reviews runs one after the other in the background. */
export interface Reviewer {
  /** Says that there may be runs to review. */
  readonly look: () => void;
  /** Has a run reviewed again. */
  readonly again: (id: string) => Promise<void>;
  readonly close: () => Promise<void>;
}

/** After a database that could not be reached, or a run that another program reviews, it is looked again [ms]. */
const LOOK_AGAIN = 30_000;
/** A claim is for a minute; a review may take longer [ms]. */
const HOLD_EVERY = 20_000;

/**
 * Reviews what this version of the program has not reviewed yet. What is left to do is read off the database each time,
 * so that it goes on after a restart, and a new version begins with every run there is. Of several programs on one database,
 * each run is claimed by one.
 */
export function openReviewer({
  store,
  originals,
  background,
  log,
  version = PROGRAM_VERSION,
}: ReviewerParts): Reviewer {
  const closing = new AbortController();
  let working: Promise<void> | undefined;
  let again: NodeJS.Timeout | undefined;

  const reviewNext = async (): Promise<boolean> => {
    const claim = randomUUID();
    const { run, held } = await store.runs.claimReview(version, claim);
    if (run === undefined) {
      // whoever holds one may end before it is reviewed
      if (held) lookLater();
      return false;
    }
    const holding = setInterval(() => void store.runs.holdReview(claim).catch(() => undefined), HOLD_EVERY);
    try {
      await store.runs.reviewed(run.id, version, await found(run));
    } catch (error) {
      // what was broken off by closing was no try
      if (closing.signal.aborted) await store.runs.forgetReviews(run.id, version);
      else throw error;
    } finally {
      clearInterval(holding);
    }
    return !closing.signal.aborted;
  };
  const found = async (run: StoredRun): ReturnType<typeof reviewOf> => {
    try {
      return await reviewOf(run);
    } catch (error) {
      if (!(error instanceof Refused) || closing.signal.aborted) throw error;
      return { report: null, summary: null, trouble: error.message };
    }
  };
  const reviewOf = async ({ job_id, original, logger, rehearsal, ...run }: StoredRun) => {
    const { signal } = closing;
    const question = await questionOf(store, { ...run, job_id });
    const answer = question && (await background.answer(question, signal));
    return background.make(
      'review',
      {
        folder: originals.folder,
        sha256: original!.sha256,
        logger,
        rehearsal,
        version,
        job: question && answer?.basis !== undefined ? { read: question.read, answer } : undefined,
        trials: question?.knowledge,
      },
      signal,
    );
  };
  const work = async (): Promise<void> => {
    try {
      while (!closing.signal.aborted && (await reviewNext()));
    } catch (error) {
      // a database that cannot be reached is told of where somebody asks for something
      if (!(error instanceof StoreFailure))
        log(`A run could not be reviewed: ${error instanceof Error ? error.message : String(error)}`);
      lookLater();
    } finally {
      working = undefined;
    }
  };
  const lookLater = (): void => {
    again = setTimeout(look, LOOK_AGAIN);
    again.unref();
  };
  const look = (): void => {
    clearTimeout(again);
    if (!closing.signal.aborted) working ??= Promise.resolve().then(work);
  };
  return {
    look,
    again: async (id) => {
      await store.runs.forgetReviews(id, version);
      look();
    },
    close: async () => {
      closing.abort();
      clearTimeout(again);
      await working;
    },
  };
}
