import type { LiveSource } from '@furrow/contract';
import {
  beliefOfJob,
  type LogBatch,
  REHEARSAL_CHANNELS,
  readFaults,
  readKnowledge,
  rehearsalHead,
  rehearsalRows,
  rehearse,
} from '@furrow/engine';
import type { Store, StoredRun } from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import type { Intake, Source } from '../intake/index.ts';
import type { Work } from '../work/open-work.ts';
import { questionOf } from './run-question.ts';

interface Rig {
  readonly store: Store;
  readonly work: Work;
  readonly run: StoredRun;
  readonly source: Extract<LiveSource, { readonly kind: 'rehearsal' }>;
  /** Rows that it gave before the program was started again [-]. */
  readonly given: number;
}

/** Rows per second: what most loggers write. */
const RATE = 20;
/** Time between two frames [ms]. */
const FRAME = 100;

/** Plays a rig that runs the job's plan, in its own time and through the intake that every rig goes through. */
export async function playRig(
  intake: Intake,
  { store, work, run, source, given }: Rig,
  tell: (what: string) => void,
): Promise<Source> {
  const question = await questionOf(store, run);
  const answer = question && (await work.answer(question, new AbortController().signal));
  if (question === undefined || answer?.basis === undefined)
    throw new Refused('RUN_SOURCE', 'This job has no plan that a rig could run.');
  const { job } = question.read;
  const { plan } = answer.basis;
  const faults = readFaults(source.faults, job, plan, source.seed);
  if (!faults.ok) throw new Refused('RUN_SOURCE', faults.issues.map(({ message }) => message).join(' '));
  const trials = question.knowledge === undefined ? undefined : readKnowledge(question.knowledge);
  const belief = beliefOfJob(job, trials?.ok ? trials.value : undefined);
  const { seed } = source;
  const { batches } = rehearse({ job, plan, belief, seed, rate: RATE, faults: faults.value });
  const rows = rowsOf(batches);
  let next = rows.next();
  for (let row = 0; row < given && !next.done; row += 1) next = rows.next();
  const from = next.done ? 0 : next.value[0]!;
  const began = performance.now();
  tell('a rehearsal is played');
  const timer = setInterval(() => {
    const at = from + (performance.now() - began) / 1000;
    const due: (readonly number[])[] = [];
    for (; !next.done && next.value[0]! <= at; next = rows.next()) due.push(next.value);
    if (due.length > 0) {
      const frame = Object.fromEntries(NAMES.map((name, index) => [name, due.map((row) => row[index]!)]));
      intake.take(Buffer.from(JSON.stringify(frame))).catch((error: unknown) => tell(String(error)));
    }
    if (!next.done) return;
    tell('the rehearsal is over');
    clearInterval(timer);
  }, FRAME);
  return { address: 'a rig that is played', close: async () => clearInterval(timer) };
}

const NAMES = rehearsalHead('', REHEARSAL_CHANNELS).trim().split('\n').at(-1)!.split(',');

/** Rows as its logger writes them. */
function* rowsOf(batches: Iterable<LogBatch>): Generator<readonly number[], undefined> {
  for (const batch of batches)
    for (const line of rehearsalRows(batch, REHEARSAL_CHANNELS).trimEnd().split('\n'))
      yield line.split(',').map(Number);
  return undefined;
}
