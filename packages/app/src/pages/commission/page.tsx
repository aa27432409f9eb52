import type { Commissioning, CountedFaults, SavedJob, SavedKit } from '@furrow/contract';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import {
  fetchCommissioning,
  fetchFaultCounts,
  fetchJob,
  fetchKit,
  saveCommissioning,
} from '../../api/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { CommissionView } from './commission-view.tsx';
import { openRig, type Rig } from './rig.ts';
import { RigContext } from './rig-context.ts';
import { rigDraftOf } from './rig-draft.ts';
import { useFaultCounts } from './use-fault-counts.ts';
import './style.css';

interface Loaded {
  readonly job: SavedJob;
  readonly kit: SavedKit;
  readonly saved: Commissioning;
  readonly counts: CountedFaults;
}

/** The page for the tablet at the rig: what to connect, check and read before the first arc of a saved job. */
export function CommissionPage({ id }: { readonly id: string | undefined }): VNode | null {
  return id === undefined ? null : <RigOfJob id={id} />;
}

function RigOfJob({ id }: { readonly id: string }): VNode {
  const [loaded, setLoaded] = useState<Loaded | string>();
  useEffect(() => {
    let left = false;
    void load(id).then((next) => {
      if (!left) setLoaded(next);
    });
    return () => {
      left = true;
    };
  }, [id]);
  if (loaded === undefined) return <Waiting text="Opening the readings of the job." />;
  if (typeof loaded === 'string') return <Waiting text={loaded} trouble />;
  return <OpenedRig loaded={loaded} />;
}

function OpenedRig({ loaded }: { readonly loaded: Loaded }): VNode | null {
  const { job, kit, saved, counts } = loaded;
  const [rig, setRig] = useState<Rig>();
  const shop = useFaultCounts(counts);
  useEffect(() => {
    const opened = openRig(job.id, saved, rigDraftOf(localStorage, job.id), {
      send: (save) => saveCommissioning(job.id, save),
      memory: localStorage,
      later(what, milliseconds) {
        const timer = setTimeout(what, milliseconds);
        return () => clearTimeout(timer);
      },
    });
    setRig(opened);
    const saveNow = (): void => void opened.saveNow();
    window.addEventListener('online', saveNow);
    return () => {
      window.removeEventListener('online', saveNow);
      opened.close();
    };
  }, [job.id, saved]);
  if (rig === undefined) return null;
  return (
    <RigContext.Provider value={rig}>
      <CommissionView job={job} kit={kit} shop={shop} />
    </RigContext.Provider>
  );
}

/** All that the page shows, or why it cannot, in words. */
async function load(id: string): Promise<Loaded | string> {
  const [job, kit, saved, counts] = await Promise.all([
    fetchJob(id),
    fetchKit(),
    fetchCommissioning(id),
    fetchFaultCounts(),
  ]);
  if (!job.ok) return job.failure.message;
  if (!kit.ok) return kit.failure.message;
  if (!saved.ok) return saved.failure.message;
  if (!counts.ok) return counts.failure.message;
  return { job: job.value, kit: kit.value, saved: saved.value, counts: counts.value };
}
