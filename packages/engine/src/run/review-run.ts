import type { RunExpectation } from './expectation.ts';
import { LevelFinder } from './levels.ts';
import type { ClockNote, LogBatch } from './log-batch.ts';
import type { RunOutcome } from './outcome.ts';
import { RunMachine } from './run-machine.ts';

/** Reviews the rows of a log as they come, in flat memory. */
export interface RunReview {
  /** Takes rows in the order of the file; the lists must not be changed afterwards. */
  readonly push: (batch: LogBatch, notes?: readonly ClockNote[]) => void;
  /** Ends the log and gives what it tells; nothing may be pushed afterwards. */
  readonly end: () => RunOutcome;
}

/**
 * Reviews a log while it is read: states of the arc, passes, events, places and sums.
 *
 * Set points come from the first rows with an arc; a plan, where there is one, says what they ought to be. The memory does
 * not grow with the log but with what happens in it, up to a fixed number of events of each kind.
 *
 * @param expected - what the plan leads one to expect [record], from `expectationOf`, or left out
 * @returns the review under way [record]
 * @source judgement, no source: thresholds in `event-thresholds.ts`; hysteresis, bridging and least length in this order
 * @example
 * reviewRun().end().rows // => 0
 */
export function reviewRun(expected?: RunExpectation): RunReview {
  const finder = new LevelFinder(expected);
  const early: ClockNote[] = [];
  let machine: RunMachine | undefined;
  const begin = (): RunMachine => {
    machine = new RunMachine(expected, finder.levels());
    for (const note of early.splice(0)) machine.clockNote(note);
    for (const batch of finder.release()) machine.advance(batch);
    return machine;
  };
  return {
    push: (batch, notes = []) => {
      if (machine === undefined) {
        early.push(...notes);
        if (finder.take(batch)) begin();
        return;
      }
      for (const note of notes) machine.clockNote(note);
      machine.advance(batch);
    },
    end: () => (machine ?? begin()).end(),
  };
}
