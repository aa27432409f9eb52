import { RIG_CHANGES, type RigChange, type RoundDepth, roundOf, sentencesWritten } from '@furrow/engine';
import { renderRoundText } from '@furrow/papers';
import { exitOf, type JobOptions, onJob, printed } from '../frame/on-job.ts';

interface CommissionOptions extends JobOptions {
  readonly json: boolean;
  readonly depth: RoundDepth;
  /** What was changed since the rig was checked. */
  readonly changed?: readonly RigChange[];
}

/** Tells the checks of a round at the rig: the first time, every day, or after a change. */
export const run = onJob<CommissionOptions>(
  ({ job }, answer, { json, units, depth, changed }) => {
    const { supply } = answer;
    const round = supply && roundOf(supply.checks, depth, changed);
    return {
      exit: exitOf(answer),
      print: printed(json, round && sentencesWritten(round, units), () =>
        round === undefined ? '' : renderRoundText(round, job.job.title, units),
      ),
    };
  },
  (_question, { depth, changed = [] }) => {
    if (depth === 'change' && changed.length === 0)
      return [`--depth change needs --changed with one or more of ${RIG_CHANGES.join(', ')}.`];
    if (depth !== 'change' && changed.length > 0) return ['--changed goes with --depth change alone.'];
    return [];
  },
);
