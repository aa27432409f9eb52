import type { SavedJob } from '@furrow/contract';
import { type Answer, readJob, type UnitSystem } from '@furrow/engine';
import { createJob, saveJob } from '../../api/index.ts';
import { jobFile } from '../../sheet/document/index.ts';
import type { Sheet } from '../../sheet/index.ts';
import { type Draft, keepSheet, openedSheet, openText } from '../../sheet/keep/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import { createClient, type PlanWorker, type WorkEvent } from '../../work/index.ts';
import type { BenchTrials } from './bench-history.ts';
import { type KitInUse, usedKit } from './bench-kit.ts';
import type { RunStanding } from './bench-runs.ts';
import type { BenchState } from './bench-state.ts';
import { markEdit } from './timing.ts';

/** One job on the bench: its state and what can be done with it. */
export interface Bench extends Sheet {
  readonly store: Store<BenchState>;
  readonly moveCursor: (place: number) => void;
  /** Saves; the id of the saved job, or undefined if it was not saved. */
  readonly save: (asCopy: boolean) => Promise<string | undefined>;
  /** Gives up unsaved changes. */
  readonly discard: () => void;
  /** Under what name it was kept in the browser before it was first saved; undefined where it was opened as saved. */
  readonly draftName: string | undefined;
  /** Plans with another kit from now on, or without one. */
  readonly setKit: (kit: KitInUse) => void;
  /** Text of the trials that are planned with; undefined without, or where they are left aside. */
  readonly knowledge: () => string | undefined;
  /** Whether the job is a demo job, changed or not, and none of the shop's own. */
  readonly isDemo: () => boolean;
  /** Plans with other trials from now on, or without any. */
  readonly setTrials: (trials: BenchTrials) => void;
  /** Plans with the shop's history, or as a shop without any. */
  readonly useHistory: (used: boolean) => void;
  /** Tells mistakes in other units from now on. */
  readonly setUnits: (units: UnitSystem) => void;
  /** Where the job stands in being run from now on. */
  readonly setRuns: (runs: RunStanding) => void;
  readonly close: () => void;
}

/** What a bench starts with. */
export interface BenchStart {
  readonly text: string;
  /** What to plan with; without a kit where left out. */
  readonly kit?: KitInUse;
  /** What the shop has tried and gauged; nothing where left out. */
  readonly history?: BenchTrials;
  /** Where the job stands in being run; not known where left out. */
  readonly runs?: RunStanding | undefined;
  /** Units in which mistakes are told; metric where left out. */
  readonly units?: UnitSystem;
  /** The job as it is saved; undefined as long as it is not. */
  readonly saved?: SavedJob | undefined;
  readonly draft?: Draft | undefined;
  /** Under what name its draft is kept before it is saved. */
  readonly draftName?: string;
  /** Whether it is a demo job, changed or not; false for another job in its place, undefined where there is no demo job. */
  readonly demo?: boolean;
}

/** What a bench uses of the browser. */
export interface BenchTools {
  readonly startWorker: () => PlanWorker;
  readonly memory: Storage;
}

/** Opens a job on a bench. */
export function openBench(start: BenchStart, { startWorker, memory }: BenchTools): Bench {
  const store = createStore<BenchState>({
    ...openedSheet(openText(start.text, start.saved, start.draft), jobFile),
    edit: 0,
    issues: [],
    read: undefined,
    planned: undefined,
    plannerFailure: undefined,
    kit: start.kit ?? 'none',
    history: { trials: undefined, moreSince: false, ...start.history, used: true },
    runs: start.runs,
    cursor: undefined,
  });
  const planner = createClient(startWorker, (event) => store.set(afterEvent(store.get(), event)));

  let { units = 'metric' } = start;
  const knowledge = (): string | undefined => {
    const { trials, used } = store.get().history;
    return used ? trials : undefined;
  };
  const draftName = start.draftName ?? 'new';
  /** Identifier of a new job that was sent and not answered: it may be saved all the same. */
  let newId: string | undefined;
  const sheet = keepSheet<SavedJob>(store, {
    noun: 'job',
    fileOf: jobFile,
    readAs(file) {
      markEdit();
      const outcome = readJob(file.text, units);
      const { edit, read } = store.get();
      return {
        edit: edit + 1,
        plannerFailure: undefined,
        ...(outcome.ok ? { issues: [], read: outcome.value } : { issues: outcome.issues, read }),
      };
    },
    taken() {
      const { issues, read, kit } = store.get();
      if (read === undefined || issues.length > 0) planner.stop();
      else planner.ask({ read, kit: usedKit(kit)?.read, knowledge: knowledge() });
    },
    async send(content, basedOn, to) {
      const id = to?.id ?? newId ?? crypto.randomUUID();
      newId = to === undefined ? id : undefined;
      const reply = await (to === undefined ? createJob(id, content) : saveJob(id, content, basedOn));
      if (reply.ok || reply.failure.newer !== undefined) newId = undefined;
      return reply;
    },
    memory,
    key: () => store.get().saved?.id ?? draftName,
    mark: () => (start.demo === true && store.get().saved === undefined ? { demo: true } : {}),
  });

  sheet.readAgain();
  return {
    ...sheet,
    store,
    moveCursor: (cursor) => store.set({ cursor }),
    async save(asCopy) {
      const saved = await sheet.save(asCopy);
      if (saved !== undefined) store.set({ history: { ...store.get().history, moreSince: false } });
      return saved?.id;
    },
    draftName: start.saved === undefined ? draftName : undefined,
    setKit(kit) {
      const before = usedKit(store.get().kit)?.text;
      store.set({ kit });
      if (usedKit(kit)?.text !== before) sheet.readAgain();
    },
    knowledge,
    isDemo() {
      const { saved, file, base } = store.get();
      return saved === undefined && start.demo !== undefined && (start.demo || file.text === base);
    },
    setTrials(next) {
      const { history } = store.get();
      store.set({ history: { ...history, ...next } });
      if (next.trials !== history.trials && history.used) sheet.readAgain();
    },
    useHistory(used) {
      const { history } = store.get();
      if (used === history.used) return;
      store.set({ history: { ...history, used } });
      sheet.readAgain();
    },
    setUnits(next) {
      if (next === units) return;
      units = next;
      const outcome = readJob(store.get().file.text, units);
      store.set({ issues: outcome.ok ? [] : outcome.issues });
    },
    setRuns: (runs) => store.set({ runs }),
    close: () => planner.close(),
  };
}

/** What comes of the newest request, which is for the text as it stands: one with mistakes stops the planner. */
function afterEvent({ edit, read }: BenchState, event: WorkEvent<Answer>): Partial<BenchState> {
  if (event.is === 'failure') return { plannerFailure: event.message };
  if (event.is !== 'part' || read === undefined) return {};
  return { planned: { edit, read, answer: event.part }, plannerFailure: undefined };
}
