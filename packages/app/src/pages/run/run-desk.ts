import { PROGRAM_VERSION } from '@furrow/contract';
import type { GivenReading } from '@furrow/engine';
import { type Bench, DEMO_SEED, demoFaults, isCurrent } from '../../job/state/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import { createClient, type RunPart, type RunWorker, type WorkEvent } from '../../work/index.ts';
import type { OpenedLog, RunState } from './run-state.ts';

/** The log of the job on the bench, and what can be done with it. */
export interface RunDesk {
  readonly store: Store<RunState>;
  readonly open: (log: OpenedLog) => void;
  /** Plays a rig that runs the plan. */
  readonly rehearse: (seed: number) => void;
  /** Reads the log again with what a person says of it. */
  readonly correct: (given: GivenReading) => void;
  /** The log that is open is kept as that run now. */
  readonly isKept: (run: string) => void;
  /** That run is no longer kept. */
  readonly isErased: (run: string) => void;
  readonly close: () => void;
}

/** Faults that a rehearsal on this page shows: a short seam has no room for all of them. */
const FAULTS_LONG = 'all';
const FAULTS_SHORT = 'arc_out, spike';
/** Length of a seam from which there is room for each fault [m]. */
const LONG = 2;

/** Follows the bench: the log is reviewed again with each new plan. A demo job opens with a rehearsal. */
export function openRunDesk(
  bench: Bench,
  { startWorker, demo }: { readonly startWorker: () => RunWorker; readonly demo: string | undefined },
): RunDesk {
  const store = createStore<RunState>({ log: undefined, shown: undefined, run: { is: 'waiting' } });
  let askedEdit: number | undefined;
  const reviewer = createClient(startWorker, (event) => take(event));

  const take = (event: WorkEvent<RunPart>): void => {
    const { planned } = bench.store.get();
    switch (event.is) {
      case 'progress':
        store.set({ run: { is: 'running', share: event.share } });
        return;
      case 'part': {
        const { part } = event;
        if (part.is === 'unread') store.set({ shown: undefined, run: part });
        else if (planned !== undefined) store.set({ shown: { planned, ...part }, run: { is: 'done' } });
        return;
      }
      case 'done':
        return;
      case 'failure':
        store.set({ run: { is: 'failed', why: event.message } });
        return;
    }
  };
  const ask = (): void => {
    const state = bench.store.get();
    const { log } = store.get();
    const { planned } = state;
    if (log === undefined || planned === undefined || !isCurrent(state)) return;
    askedEdit = planned.edit;
    store.set({ run: { is: 'running', share: 0 } });
    const answer = { ...planned.answer, alternatives: [] };
    const { source, given, logger, live } = log;
    const request = { source, version: PROGRAM_VERSION, read: planned.read, answer, given, logger, live };
    reviewer.ask({ ...request, knowledge: bench.knowledge() });
  };
  const open = (log: OpenedLog): void => {
    store.set({ log });
    ask();
  };
  const playDemo = (name: string, passes: number): void => {
    const faults = demoFaults(name, passes);
    if (faults === undefined) rehearse(DEMO_SEED);
    else open({ name: 'Run of the demo', source: { is: 'rehearsal', faults, seed: DEMO_SEED } });
  };
  const rehearse = (seed: number): void => {
    const length = bench.store.get().planned?.read.job.seam.length ?? 0;
    const faults = length >= LONG ? FAULTS_LONG : FAULTS_SHORT;
    open({ name: `Rehearsal ${seed}`, source: { is: 'rehearsal', faults, seed } });
  };
  const follow = (): void => {
    const state = bench.store.get();
    if (!isCurrent(state) || state.planned === undefined) return;
    const { plan } = state.planned.answer;
    if (demo !== undefined && store.get().log === undefined && plan !== undefined)
      playDemo(demo, plan.passes.length);
    else if (askedEdit !== state.planned.edit) ask();
  };
  const forget = bench.store.listen(follow);
  follow();
  return {
    store,
    open,
    rehearse,
    correct(given) {
      const { log } = store.get();
      if (log === undefined) return;
      const clock = { ...log.given?.clock, ...given.clock };
      open({ ...log, kept: undefined, given: { ...log.given, ...given, clock } });
    },
    isKept(run) {
      const { log } = store.get();
      if (log !== undefined) store.set({ log: { ...log, kept: run } });
    },
    isErased(run) {
      const { log } = store.get();
      if (log?.kept === run) store.set({ log: { ...log, kept: undefined } });
    },
    close() {
      forget();
      reviewer.close();
    },
  };
}
