import { type LiveState, liveStateSchema, type RunBegin, type SavedRun } from '@furrow/contract';
import { beginRun, endRun, livePath } from '../../api/index.ts';
import type { Bench } from '../../job/state/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import type { KeptRuns } from './kept-runs.ts';
import type { RunDesk } from './run-desk.ts';

/** A live run as the page follows it. */
export interface FollowedRun {
  readonly run: SavedRun;
  /** The last reading by name, as it was sent. */
  readonly last: Readonly<Record<string, number>>;
  readonly told: LiveState | undefined;
  /** When the last reading came, by the clock that only goes forward; undefined before the first [ms]. */
  readonly lastAt: number | undefined;
  /** Whether the line to the program is open. */
  readonly connected: boolean;
}

/** What is known of runs that are under way. */
export interface LiveRunState {
  readonly followed: FollowedRun | undefined;
  readonly doing: string | undefined;
  readonly trouble: string | undefined;
}

/** The live run of the job, and what can be done with it. */
export interface LiveDesk {
  readonly store: Store<LiveRunState>;
  readonly begin: (name: string, source: RunBegin['source']) => Promise<void>;
  readonly end: () => Promise<void>;
  readonly close: () => void;
}

/** Least time between two reviews of what came in, and its share that they may take [ms], [-]. */
const REVIEW_EVERY = 700;
const REVIEW_SHARE = 0.3;

/** Follows the live run of the job on the bench, as soon as there is one. */
export function openLiveDesk(bench: Bench, desk: RunDesk, kept: KeptRuns): LiveDesk {
  const store = createStore<LiveRunState>({ followed: undefined, doing: undefined, trouble: undefined });
  let events: EventSource | undefined;
  let pieces: string[] = [];
  let fresh = false;
  let reviewedAt = 0;
  let asked = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Runs that have ended, which a list asked for before may still call live. */
  const over = new Set<string>();

  const set = (change: Partial<FollowedRun>): void => {
    const { followed } = store.get();
    if (followed !== undefined) store.set({ followed: { ...followed, ...change } });
  };
  /** Reviews what has come so far, as often as it is worth. */
  const review = (): void => {
    clearTimeout(timer);
    const { followed } = store.get();
    if (followed === undefined || !fresh) return;
    if (desk.store.get().run.is === 'running') {
      timer = setTimeout(review, REVIEW_EVERY / 4);
      return;
    }
    const now = performance.now();
    const took = Math.max(0, reviewedAt - asked);
    const due = reviewedAt + Math.max(REVIEW_EVERY, took / REVIEW_SHARE);
    if (now < due) {
      timer = setTimeout(review, due - now);
      return;
    }
    fresh = false;
    asked = now;
    const { name, id, logger } = followed.run;
    desk.open({
      name,
      source: { is: 'file', file: new Blob(pieces) },
      logger: logger ?? undefined,
      kept: id,
      live: true,
    });
  };
  const forgetReview = desk.store.listen(() => {
    if (store.get().followed === undefined || desk.store.get().run.is === 'running') return;
    if (reviewedAt < asked) reviewedAt = performance.now();
    review();
  });
  const leave = (): void => {
    const { followed } = store.get();
    if (followed !== undefined) over.add(followed.run.id);
    events?.close();
    events = undefined;
    clearTimeout(timer);
    store.set({ followed: undefined });
  };
  const follow = (run: SavedRun): void => {
    events?.close();
    pieces = [];
    fresh = false;
    store.set({ followed: { run, last: {}, told: undefined, lastAt: undefined, connected: false } });
    const source = new EventSource(livePath(run.id, 'runEvents'));
    events = source;
    source.onopen = () => set({ connected: true });
    // it asks again by itself, from the last place on
    source.onerror = () => set({ connected: false });
    source.onmessage = ({ data }: MessageEvent<string>) => {
      pieces.push(`${data}\n`);
      fresh = true;
      const last = readingsOf(data.slice(data.lastIndexOf('\n') + 1));
      set({ connected: true, lastAt: performance.now(), ...(last === undefined ? {} : { last }) });
      review();
    };
    source.addEventListener('state', ({ data }: MessageEvent<string>) => {
      const told = liveStateSchema.safeParse(JSON.parse(data)).data;
      const age = told?.age_ms ?? undefined;
      set({ told, connected: true, ...(age === undefined ? {} : { lastAt: performance.now() - age }) });
    });
    source.addEventListener('end', () => {
      leave();
      void kept.load();
    });
  };
  const look = (): void => {
    const { followed } = store.get();
    const live = kept.store.get().runs?.find((each) => each.live);
    if (followed === undefined && live !== undefined && !over.has(live.id)) follow(live);
  };
  const forgetKept = kept.store.listen(look);

  return {
    store,
    async begin(name, source) {
      const { saved } = bench.store.get();
      if (saved === undefined) return;
      store.set({ doing: 'Beginning', trouble: undefined });
      const run = { id: crypto.randomUUID(), name, revision_number: saved.revision_number, source };
      const reply = await beginRun(saved.id, run);
      store.set({ doing: undefined, ...(reply.ok ? {} : { trouble: reply.failure.message }) });
      if (!reply.ok) return;
      follow(reply.value);
      await kept.load();
    },
    async end() {
      const { followed } = store.get();
      if (followed === undefined) return;
      store.set({ doing: 'Ending', trouble: undefined });
      const reply = await endRun(followed.run.id);
      store.set({ doing: undefined, ...(reply.ok ? {} : { trouble: reply.failure.message }) });
      if (!reply.ok) return;
      leave();
      await kept.load();
    },
    close() {
      forgetKept();
      forgetReview();
      leave();
    },
  };
}

/** The readings of a line: numbers by name, the newest of a frame of several; undefined where it holds none. */
export function readingsOf(line: string): Readonly<Record<string, number>> | undefined {
  let read: unknown;
  try {
    read = JSON.parse(line);
  } catch {
    return undefined;
  }
  if (typeof read !== 'object' || read === null || Array.isArray(read)) return undefined;
  const entries = Object.entries(read).flatMap(([name, value]): [string, number][] => {
    const last: unknown = Array.isArray(value) ? value.at(-1) : value;
    return typeof last === 'number' ? [[name, last]] : [];
  });
  return entries.length === 0 ? undefined : Object.fromEntries(entries);
}
