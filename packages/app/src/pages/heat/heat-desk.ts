import { type Bench, type BenchState, cutPlace, isCurrent } from '../../job/state/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import { createClient, type HeatPart, type HeatWorker, type WorkEvent } from '../../work/index.ts';
import type { HeatState } from './heat-state.ts';

/** How long the cursor of the seam strip rests before the section is solved anew [ms]. */
const CURSOR_RESTS = 300;

/** The heat of the job on the bench, and what can be done with it. */
export interface HeatDesk {
  readonly store: Store<HeatState>;
  /** Looks at a moment. */
  readonly lookAt: (time: number) => void;
  readonly play: (playing: boolean) => void;
  /** Gives up what is under way. */
  readonly stop: () => void;
  /** Solves again. */
  readonly again: () => void;
  readonly close: () => void;
}

/** What the desk uses of the browser. */
export interface HeatDeskTools {
  readonly startWorker: () => HeatWorker;
  /** Runs something later; what it gives back calls that off. */
  readonly later: (run: () => void, milliseconds: number) => () => void;
}

/** What the heat is asked for. */
interface Wanted {
  readonly edit: number;
  readonly station: number;
}

/** Follows the bench: each new plan is solved at once, each new place when the cursor rests. */
export function openHeatDesk(bench: Bench, { startWorker, later }: HeatDeskTools): HeatDesk {
  const store = createStore<HeatState>({
    shown: undefined,
    run: { is: 'waiting' },
    time: undefined,
    playing: false,
  });
  let asked: Wanted | undefined;
  let callOff = (): void => {};
  const solver = createClient(startWorker, (event) => take(event));

  const take = (event: WorkEvent<HeatPart>): void => {
    const { planned } = bench.store.get();
    const { run } = store.get();
    switch (event.is) {
      case 'progress':
        if (run.is === 'running') store.set({ run: { ...run, share: event.share } });
        return;
      case 'part':
        if (planned === undefined || asked === undefined) return;
        store.set({
          shown: { planned, station: asked.station, ...event.part },
          run:
            event.part.quality === 'quick' ? { is: 'running', quality: 'refined', share: 0 } : { is: 'done' },
        });
        return;
      case 'done':
        // without the part of the last grid there is no plan that heats anything
        if (run.is === 'running') store.set({ shown: undefined, run: { is: 'nothing' } });
        return;
      case 'failure':
        store.set({ run: { is: 'failed', why: event.message } });
        return;
    }
  };
  const ask = (): void => {
    callOff();
    const state = bench.store.get();
    const { planned } = state;
    if (planned === undefined || !isCurrent(state)) return;
    asked = { edit: planned.edit, station: stationOf(state) };
    if (planned.answer.plan === undefined) {
      solver.stop();
      store.set({ shown: undefined, run: { is: 'nothing' }, playing: false });
      return;
    }
    store.set({ run: { is: 'running', quality: 'quick', share: 0 } });
    // the other plans are no part of the question, and need not be copied
    const answer = { ...planned.answer, alternatives: [] };
    solver.ask({ read: planned.read, answer, station: asked.station, knowledge: bench.knowledge() });
  };
  const follow = (): void => {
    const state = bench.store.get();
    if (!isCurrent(state) || state.planned === undefined) return;
    if (asked?.edit !== state.planned.edit) ask();
    else if (asked.station !== stationOf(state)) {
      callOff();
      callOff = later(ask, CURSOR_RESTS);
    }
  };

  const forget = bench.store.listen(follow);
  follow();
  return {
    store,
    lookAt: (time) => store.set({ time }),
    play: (playing) => store.set({ playing }),
    stop() {
      callOff();
      solver.stop();
      store.set({ run: { is: 'stopped' } });
    },
    again: ask,
    close() {
      forget();
      callOff();
      solver.close();
    },
  };
}

/** The seam strip's cursor, kept on the seam itself: a run-out has no section of the whole groove [m]. */
function stationOf(state: BenchState): number {
  const length = state.planned?.read.job.seam.length ?? 0;
  return Math.min(length, Math.max(0, cutPlace(state)));
}
