import { PROGRAM_VERSION } from '@furrow/contract';
import type { Readings } from '@furrow/engine';
import type { ReadingsDesk } from '../../job/readings/index.ts';
import { type Bench, isCurrent } from '../../job/state/index.ts';
import { createStore, type Store } from '../../ui/store/index.ts';
import {
  createClient,
  type MeasuredFile,
  type SurveyPart,
  type SurveyWorker,
  type WorkEvent,
} from '../../work/index.ts';
import { dayOf, entryName, timeOf } from './entry-name.ts';
import type { GrooveState } from './groove-state.ts';
import type { Originals } from './originals.ts';

/** What was measured of the groove of the job on the bench, and what can be done with it. */
export interface GrooveDesk {
  readonly store: Store<GrooveState>;
  /** Takes files in as they were written: each is kept and listed among the readings. Why not, where one is not. */
  readonly takeFiles: (files: readonly File[], by: string) => Promise<string | undefined>;
  /** Takes in a log that the server has, before the readings name it. */
  readonly hold: (sha256: string, file: Blob) => void;
  readonly close: () => void;
}

/** What a desk is made of. */
export interface GrooveParts {
  readonly bench: Bench;
  readonly readings: ReadingsDesk;
  readonly startWorker: () => SurveyWorker;
  readonly originals: Originals;
  /** Text of the gauge that the shop keeps; empty where it keeps none. */
  readonly gauge: string;
  /** Id of the job; undefined as long as it is not saved. */
  readonly id: string | undefined;
}

/** Follows bench and readings: what was measured is fused again with each new plan and each new reading. */
export function openGrooveDesk({
  bench,
  readings,
  startWorker,
  originals,
  gauge,
  id,
}: GrooveParts): GrooveDesk {
  const store = createStore<GrooveState>({ shown: undefined, survey: { is: 'waiting' }, missing: [] });
  let asked: { readonly edit: number; readonly text: string } | undefined;
  let closed = false;
  const take = (event: WorkEvent<SurveyPart>): void => {
    const { planned } = bench.store.get();
    switch (event.is) {
      case 'progress':
        store.set({ survey: { is: 'running', share: event.share } });
        return;
      case 'part': {
        const { part } = event;
        if (part.is === 'unread') store.set({ shown: undefined, survey: { is: 'unread', why: part.why } });
        else if (planned !== undefined) store.set({ shown: { planned, ...part }, survey: { is: 'done' } });
        return;
      }
      case 'done':
        return;
      case 'failure':
        store.set({ survey: { is: 'failed', why: event.message } });
        return;
    }
  };
  const worker = createClient(startWorker, take);
  const filesOf = async ({ files = [], run }: Readings): Promise<readonly MeasuredFile[]> => {
    const found = await Promise.all(
      (run === undefined ? files : [...files, run]).map(async ({ name, sha256 }) => ({
        name,
        file: await originals.get(sha256),
      })),
    );
    store.set({ missing: found.flatMap(({ name, file }) => (file === undefined ? [name] : [])) });
    return found.flatMap(({ name, file }) => (file === undefined ? [] : [{ name, file }]));
  };
  const follow = async (): Promise<void> => {
    const state = bench.store.get();
    const { issues, file, read } = readings.store.get();
    const { planned } = state;
    if (planned === undefined || !isCurrent(state) || issues.length > 0) return;
    const want = { edit: planned.edit, text: file.text };
    if (asked?.edit === want.edit && asked.text === want.text) return;
    asked = want;
    store.set({ survey: { is: 'running', share: 0 } });
    const files = read === undefined ? [] : await filesOf(read.readings);
    // what changed while the files were fetched is asked for on its own
    if (closed || asked !== want) return;
    worker.ask({
      readings: read === undefined ? undefined : file.text,
      files,
      version: PROGRAM_VERSION,
      read: planned.read,
      answer: { ...planned.answer, alternatives: [] },
      knowledge: bench.knowledge(),
      gauge,
      entry: { id: entryName(id), date: dayOf(read?.readings.date, new Date()) },
    });
  };
  const forget = [bench.store.listen(() => void follow()), readings.store.listen(() => void follow())];
  void follow();
  return {
    store,
    hold: originals.hold,
    async takeFiles(files, by) {
      const after = readings.store.get().read?.readings.recuts?.length ?? 0;
      for (const file of files) {
        const kept = await originals.put(file);
        if (!kept.ok) return `${file.name} could not be kept: ${kept.failure.message}`;
        readings.change([
          {
            do: 'append',
            path: ['files'],
            entry: {
              name: file.name,
              sha256: kept.value,
              ...(after > 0 && { after_recut: after }),
              ...(by !== '' && { by }),
              when: timeOf(new Date()),
            },
          },
        ]);
      }
      return undefined;
    },
    close() {
      closed = true;
      for (const each of forget) each();
      worker.close();
    },
  };
}
