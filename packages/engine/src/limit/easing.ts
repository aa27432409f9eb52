import type { Job } from '../job/index.ts';
import type { Sentence, StatedUnit } from '../quantity/index.ts';

/** One way to give way: the job with a little of it changed, and how that is said. */
export interface Easing {
  /** Identifier of the constraint that it eases, as limits and misses name it. */
  readonly constraint: string;
  readonly unit: StatedUnit;
  /** Whether it can free set-ups that were all turned away before their depth was solved. */
  readonly beforeDepth?: boolean;
  /** What the job says now, in `unit` [see unit]. */
  readonly now: number;
  /** Changes to try, the least first, in `unit` [list]; none: nothing to ease here. */
  readonly steps: readonly number[];
  readonly apply: (job: Job, value: number) => Job;
  /** The change in words, to be read before "would free it". */
  readonly words: (value: number) => Sentence;
}
