import type { SavedJob } from '@furrow/contract';
import { type Answer, readJob, type UnitSystem } from '@furrow/engine';
import { createJob, type Reply, saveJob } from '../../api/index.ts';
import { editFile, jobFile, type TextFile } from '../../sheet/document/index.ts';
import type { Sheet } from '../../sheet/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import { createClient, type PlanWorker, type WorkEvent } from '../../work/index.ts';
import type { BenchTrials } from './bench-history.ts';
import { type KitInUse, usedKit } from './bench-kit.ts';
import { type BenchState, isUnsaved, type SavedAs } from './bench-state.ts';
import { type Draft, dropDraft, keepDraft } from './draft.ts';
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
  /** Tells amounts in other units from now on. */
  readonly setUnits: (units: UnitSystem) => void;
  readonly close: () => void;
}

/** What a bench starts with. */
export interface BenchStart {
  readonly text: string;
  /** What to plan with; without a kit where left out. */
  readonly kit?: KitInUse;
  /** What the shop has tried and gauged; nothing where left out. */
  readonly history?: BenchTrials;
  /** Units in which the answer's words tell amounts; metric where left out. */
  readonly units?: UnitSystem;
  readonly savedAs?: SavedAs | undefined;
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
  const restored = start.draft !== undefined && start.draft.text !== start.text;
  const text = restored ? (start.draft?.text ?? start.text) : start.text;
  const store = createStore<BenchState>({
    file: jobFile(text),
    readable: jobFile(text),
    edit: 0,
    issues: [],
    read: undefined,
    planned: undefined,
    plannerFailure: undefined,
    editRefused: undefined,
    kit: start.kit ?? 'none',
    opened: start.text,
    savedAs: savedWith(start),
    history: { trials: undefined, moreSince: false, ...start.history, used: true },
    save: { is: 'still' },
    restored,
    cursor: undefined,
  });
  const planner = createClient(startWorker, (event) => store.set(afterEvent(store.get(), event)));

  let { units = 'metric' } = start;
  const take = (file: TextFile): void => {
    markEdit();
    const outcome = readJob(file.text);
    const state = store.get();
    const edit = state.edit + 1;
    store.set({
      file,
      readable: file.broken ? state.readable : file,
      edit,
      issues: outcome.ok ? [] : outcome.issues,
      read: outcome.ok ? outcome.value : state.read,
      plannerFailure: undefined,
      editRefused: undefined,
      ...(state.save.is === 'failed' ? { save: { is: 'still' } as const } : {}),
    });
    if (outcome.ok)
      planner.ask({
        read: outcome.value,
        units,
        kit: usedKit(state.kit)?.read,
        knowledge: knowledge(),
      });
    else planner.stop();
    remember();
  };
  const knowledge = (): string | undefined => {
    const { trials, used } = store.get().history;
    return used ? trials : undefined;
  };
  const key = (): string => store.get().savedAs?.id ?? start.draftName ?? 'new';
  const remember = (): void => {
    const state = store.get();
    if (!isUnsaved(state)) dropDraft(memory, key());
    else {
      keepDraft(memory, key(), {
        text: state.file.text,
        based_on: state.savedAs?.revision ?? 0,
        ...(start.demo === true && state.savedAs === undefined && { demo: true }),
      });
    }
  };

  /** What was sent and not answered: it may be saved all the same, and is then no change of somebody else. */
  let unanswered: Sent | undefined;
  const send = async (text: string, to: SavedAs | undefined): Promise<Reply<SavedJob>> => {
    const id = to?.id ?? unanswered?.newId ?? crypto.randomUUID();
    const sent = unanswered?.texts ?? [];
    const newId = to === undefined ? id : undefined;
    unanswered = { newId, texts: [...sent, text] };
    let reply = to === undefined ? await createJob(id, text) : await saveJob(id, text, to.revision);
    const met = reply.ok ? undefined : reply.failure.newer;
    if (met !== undefined && sent.includes(met.text)) reply = await saveJob(id, text, met.revision_number);
    if (reply.ok || reply.failure.newer !== undefined) unanswered = undefined;
    return reply;
  };

  const save = async (asCopy: boolean): Promise<string | undefined> => {
    const { file, savedAs, save: now } = store.get();
    if (now.is === 'saving') return undefined;
    store.set({ save: { is: 'saving' } });
    const reply = await send(file.text, asCopy ? undefined : savedAs);
    if (!reply.ok) {
      const { message, newer } = reply.failure;
      store.set({ save: { is: 'failed', why: message, conflict: newer !== undefined } });
      return undefined;
    }
    dropDraft(memory, key());
    const { id, revision_number, saved_at } = reply.value;
    store.set({
      savedAs: { id, revision: revision_number, at: saved_at, text: file.text },
      history: { ...store.get().history, moreSince: false },
      save: { is: 'still' },
      restored: false,
    });
    remember();
    return id;
  };

  take(store.get().file);
  return {
    noun: 'job',
    store,
    change(edits) {
      const edited = editFile(store.get().file, edits);
      if (edited.ok) take(edited.file);
      else store.set({ editRefused: edited.why });
    },
    setText: (next) => take(jobFile(next)),
    moveCursor: (cursor) => store.set({ cursor }),
    save,
    discard() {
      const { savedAs, opened } = store.get();
      store.set({ restored: false });
      take(jobFile(savedAs?.text ?? opened));
    },
    draftName: start.savedAs === undefined ? (start.draftName ?? 'new') : undefined,
    setKit(kit) {
      const before = usedKit(store.get().kit)?.text;
      store.set({ kit });
      if (usedKit(kit)?.text !== before) take(store.get().file);
    },
    knowledge,
    isDemo() {
      const { savedAs, file, opened } = store.get();
      return savedAs === undefined && start.demo !== undefined && (start.demo || file.text === opened);
    },
    setTrials(next) {
      const { history, file } = store.get();
      store.set({ history: { ...history, ...next } });
      if (next.trials !== history.trials && history.used) take(file);
    },
    useHistory(used) {
      const { history, file } = store.get();
      if (used === history.used) return;
      store.set({ history: { ...history, used } });
      take(file);
    },
    setUnits(next) {
      if (next === units) return;
      units = next;
      take(store.get().file);
    },
    close: () => planner.close(),
  };
}

/** Saves that were sent and not answered. */
interface Sent {
  /** Identifier of the new job that they were to become. */
  readonly newId: string | undefined;
  readonly texts: readonly string[];
}

/** A draft made from an older revision stays based on it, so that saving it tells of the newer one. */
function savedWith({ savedAs, draft }: BenchStart): SavedAs | undefined {
  if (savedAs === undefined || draft === undefined || draft.based_on === 0) return savedAs;
  return { ...savedAs, revision: Math.min(savedAs.revision, draft.based_on) };
}

/** What comes of the newest request, which is for the text as it stands: one with mistakes stops the planner. */
function afterEvent({ edit, read }: BenchState, event: WorkEvent<Answer>): Partial<BenchState> {
  if (event.is === 'failure') return { plannerFailure: event.message };
  if (event.is !== 'part' || read === undefined) return {};
  return { planned: { edit, read, answer: event.part }, plannerFailure: undefined };
}
