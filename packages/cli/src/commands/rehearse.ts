import { writeFileSync } from 'node:fs';
import {
  beliefOfJob,
  REHEARSAL_CHANNELS,
  REHEARSAL_MARK,
  readFaults,
  rehearsalHead,
  rehearsalRows,
  rehearse,
} from '@furrow/engine';
import { badInput } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { type JobOptions, onJob } from '../frame/on-job.ts';
import { whyUnwritable } from '../output/disk.ts';

interface RehearseOptions extends JobOptions {
  /** Faults to show, as written. */
  readonly faults: string;
  readonly seed: number;
  /** Rows per second. */
  readonly rate: number;
  /** File to write; standard output without. */
  readonly output?: string;
}

/** Plays a rig that runs the job's plan, and writes what its logger would: a log marked as a rehearsal. */
export const run = onJob<RehearseOptions>(({ job: read, knowledge }, answer, options) => {
  const { seed, rate, output } = options;
  if (answer.basis === undefined)
    return { exit: EXIT.refusal, problem: ['This job has no plan that a rig could run.'] };
  const { job } = read;
  const { plan } = answer.basis;
  const faults = readFaults(options.faults, job, plan, seed);
  if (!faults.ok) return badInput(faults.issues.map(({ message }) => `--faults: ${message}`));
  const belief = beliefOfJob(job, knowledge);
  const show = rehearse({ job, plan, belief, seed, rate, faults: faults.value });
  const mark = `${REHEARSAL_MARK}: these readings were made up, no rig was run; seed ${seed}, job ${read.revision.slice(0, 12)}`;
  const parts = [rehearsalHead(mark, REHEARSAL_CHANNELS)];
  for (const batch of show.batches) parts.push(rehearsalRows(batch, REHEARSAL_CHANNELS));
  if (output === undefined) return { exit: EXIT.plan, print: parts.join('').trimEnd() };
  try {
    writeFileSync(output, parts.join(''));
  } catch (error) {
    const why = whyUnwritable(error);
    if (why === undefined) throw error;
    return badInput([`${output}: the rehearsal could not be written: ${why}`]);
  }
  return { exit: EXIT.plan, print: `Wrote ${output}, a rehearsal.` };
});
