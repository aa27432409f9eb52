import type { Commissioning, CountedFaults } from '@furrow/contract';
import type { FaultModel } from '@furrow/engine';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchCommissioning, fetchFaultCounts, saveCommissioning } from '../../api/index.ts';
import { JobPage } from '../../job/page/index.ts';
import { type Bench, DEMO_SEED, useBench, useBenchState } from '../../job/state/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { CommissionView } from './commission-view.tsx';
import { inventedRecord } from './invented-record.ts';
import { openRig, type Rig } from './rig.ts';
import { rigChecks } from './rig-checks.ts';
import { RigContext } from './rig-context.ts';
import { moveRigDraft, rigDraftOf } from './rig-draft.ts';
import type { RigRecord } from './rig-record.ts';
import { useFaultCounts } from './use-fault-counts.ts';
import './style.css';

export { sendRig } from './send-rig.ts';

interface Loaded {
  /** What is saved with the job; undefined as long as the job itself is not. */
  readonly saved: Commissioning | undefined;
  readonly counts: CountedFaults;
}

/** The page for the tablet at the rig: what to connect, check and read before the first arc of a job. */
export function CommissionPage(): VNode {
  return (
    <JobPage>
      <RigOfJob />
    </JobPage>
  );
}

function RigOfJob(): VNode {
  const id = useBenchState((state) => state.saved?.id);
  const [loaded, setLoaded] = useState<(Loaded & { readonly id: string | undefined }) | string>();
  useEffect(() => {
    let left = false;
    void load(id).then((next) => {
      if (!left) setLoaded(typeof next === 'string' ? next : { ...next, id });
    });
    return () => {
      left = true;
    };
  }, [id]);
  if (typeof loaded === 'string') return <Waiting text={loaded} trouble />;
  if (loaded === undefined || loaded.id !== id) return <Waiting text="Opening the readings of the job." />;
  return <OpenedRig key={id} id={id} loaded={loaded} />;
}

interface OpenedRigProps {
  /** Id of the job; undefined as long as it is not saved. */
  readonly id: string | undefined;
  readonly loaded: Loaded;
}

function OpenedRig({ id, loaded: { saved, counts } }: OpenedRigProps): VNode | null {
  const bench = useBench();
  const { draftName } = bench;
  const [rig, setRig] = useState<Rig>();
  const shop = useFaultCounts(counts);
  const invents = id === undefined && bench.isDemo();
  // what the rig of the demo reads rests on its plan
  const waits = useBenchState(({ planned }) => invents && planned === undefined);
  useEffect(() => {
    if (waits) return undefined;
    const memory = ownMemory();
    // what was read before the job was saved goes with it
    if (id !== undefined && draftName !== undefined) moveRigDraft(memory, draftName, id);
    const key = id ?? draftName ?? 'new';
    const opened = openRig(
      key,
      saved,
      rigDraftOf(memory, key),
      {
        ...(id === undefined ? {} : { send: (save) => saveCommissioning(id, save) }),
        memory,
        later(what, milliseconds) {
          const timer = setTimeout(what, milliseconds);
          return () => clearTimeout(timer);
        },
      },
      invents ? inventedOf(bench, shop.model) : undefined,
    );
    setRig(opened);
    const saveNow = (): void => void opened.saveNow();
    window.addEventListener('online', saveNow);
    return () => {
      window.removeEventListener('online', saveNow);
      opened.close();
    };
  }, [id, saved, waits]);
  if (rig === undefined) return waits ? <Waiting text="Planning the demo job." /> : null;
  return (
    <RigContext.Provider value={rig}>
      <CommissionView shop={shop} />
    </RigContext.Provider>
  );
}

/** What stands at the rig of a demo before anything is entered. */
function inventedOf(bench: Bench, model: FaultModel): RigRecord | undefined {
  const { planned } = bench.store.get();
  if (planned === undefined) return undefined;
  return inventedRecord(rigChecks(planned, model), planned.answer.supply?.connections ?? [], DEMO_SEED);
}

/** All that the page shows, or why it cannot, in words. */
async function load(id: string | undefined): Promise<Loaded | string> {
  const [saved, counts] = await Promise.all([
    id === undefined ? undefined : fetchCommissioning(id),
    fetchFaultCounts(),
  ]);
  if (saved?.ok === false) return saved.failure.message;
  if (!counts.ok) return counts.failure.message;
  return { saved: saved?.value, counts: counts.value };
}
