import type { SavedLogger, SavedRun } from '@furrow/contract';
import {
  eraseLogger,
  eraseRun,
  failed,
  fetchLoggers,
  fetchOriginal,
  fetchRuns,
  keepLogger,
  keepRun,
  type Reply,
  sendOriginal,
} from '../../api/index.ts';
import { type Bench, standingOf } from '../../job/state/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import type { RunDesk } from './run-desk.ts';

/** What is kept of the job's runs and of the shop's loggers. */
export interface KeptState {
  /** Runs of the job, newest first; undefined while they are asked for. */
  readonly runs: readonly SavedRun[] | undefined;
  readonly loggers: readonly SavedLogger[];
  /** Runs whose passes lie under those of the log that is open, by identifier. */
  readonly beside: readonly string[];
  /** What is under way, in words. */
  readonly doing: string | undefined;
  readonly trouble: string | undefined;
}

/** The runs that are kept, and what can be done with them. */
export interface KeptRuns {
  readonly store: Store<KeptState>;
  /** Keeps the log that is open as a run of the job. */
  readonly keep: () => Promise<void>;
  readonly open: (run: SavedRun) => Promise<void>;
  readonly erase: (run: SavedRun) => Promise<void>;
  /** Shows passes of a run under those of the log that is open, or no longer. */
  readonly showBeside: (run: SavedRun, shown: boolean) => void;
  readonly keepLogger: (text: string) => Promise<void>;
  readonly eraseLogger: (revision: string) => Promise<void>;
  readonly load: () => Promise<void>;
  readonly close: () => void;
}

/** How often is looked whether a review is done [ms]. */
const LOOK_AGAIN = 1500;

/** Opens what is kept for the job on the bench. */
export function openKeptRuns(bench: Bench, desk: RunDesk): KeptRuns {
  const store = createStore<KeptState>({
    runs: undefined,
    loggers: [],
    beside: [],
    doing: undefined,
    trouble: undefined,
  });
  let closed = false;
  let again: ReturnType<typeof setTimeout> | undefined;
  /** Identifier of a run that was sent and not answered: it may be kept all the same. */
  const sent = new Map<string, string>();

  const jobId = (): string | undefined => bench.store.get().saved?.id;
  const load = async (): Promise<void> => {
    const id = jobId();
    const [runs, loggers] = await Promise.all([id === undefined ? undefined : fetchRuns(id), fetchLoggers()]);
    if (closed) return;
    const trouble = [runs, loggers].find((reply) => reply?.ok === false);
    store.set({
      ...(runs?.ok === true ? { runs: runs.value } : id === undefined ? { runs: [] } : {}),
      ...(loggers.ok ? { loggers: loggers.value } : {}),
      ...(trouble?.ok === false ? { trouble: trouble.failure.message } : {}),
    });
    if (runs?.ok === true) bench.setRuns(standingOf(runs.value));
    clearTimeout(again);
    const waits = store.get().runs?.some(({ live, review }) => !live && review === null);
    if (waits === true) again = setTimeout(() => void load(), LOOK_AGAIN);
  };
  /** Does something that the server is asked for, and tells of what goes wrong. */
  const doing = async <T>(what: string, work: () => Promise<Reply<T>>): Promise<T | undefined> => {
    store.set({ doing: what, trouble: undefined });
    const reply = await work();
    store.set({ doing: undefined, ...(reply.ok ? {} : { trouble: reply.failure.message }) });
    return reply.ok ? reply.value : undefined;
  };

  void load();
  return {
    store,
    load,
    async keep() {
      const { log, shown } = desk.store.get();
      const { saved } = bench.store.get();
      if (log === undefined || shown === undefined || saved === undefined) return;
      const sha256 = shown.report.inputs.file_sha256;
      const id = sent.get(sha256) ?? crypto.randomUUID();
      sent.set(sha256, id);
      const run = await doing('Keeping the run', async () => {
        const original = await sendOriginal(shown.file);
        if (!original.ok) return failed(original.failure.message);
        return keepRun(saved.id, {
          id,
          name: log.name,
          revision_number: saved.revision_number,
          sha256: original.value.sha256,
          ...(log.given === undefined && log.logger === undefined ? {} : { logger: shown.logger }),
        });
      });
      if (run === undefined) return;
      sent.delete(sha256);
      desk.isKept(run.id);
      await load();
    },
    async open(run) {
      const file = await doing(`Opening ${run.name}`, () => fetchOriginal(run.id));
      if (file === undefined) return;
      const { id: kept, name, logger } = run;
      desk.open({ name, source: { is: 'file', file }, logger: logger ?? undefined, kept });
    },
    async erase(run) {
      await doing(`Erasing ${run.name}`, () => eraseRun(run.id));
      desk.isErased(run.id);
      await load();
    },
    showBeside({ id }, shown) {
      const others = store.get().beside.filter((each) => each !== id);
      store.set({ beside: shown ? [...others, id] : others });
    },
    async keepLogger(text) {
      const loggers = await doing('Keeping the logger description', () => keepLogger(text));
      if (loggers !== undefined) store.set({ loggers });
    },
    async eraseLogger(revision) {
      const loggers = await doing('Erasing the logger description', () => eraseLogger(revision));
      if (loggers !== undefined) store.set({ loggers });
    },
    close() {
      closed = true;
      clearTimeout(again);
    },
  };
}
