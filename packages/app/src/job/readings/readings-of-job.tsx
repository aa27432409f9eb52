import type { SavedShopFile } from '@furrow/contract';
import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchReadings, fetchReadingsExamples, saveReadings } from '../../api/index.ts';
import { SheetContext } from '../../sheet/index.ts';
import { useLeaveGuard } from '../../sheet/keep/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { useBench, useBenchState } from '../state/index.ts';
import { ReadingsContext, useReadings } from './readings-context.ts';
import { moveReadings, openReadings, type ReadingsDesk } from './readings-desk.ts';

interface Loaded {
  /** Id of the job; undefined as long as it is not saved. */
  readonly id: string | undefined;
  /** What is saved with the job; undefined as long as the job itself is not. */
  readonly saved: SavedShopFile | undefined;
  /** What stands there as long as nothing was entered: the invented readings of a demo job. */
  readonly start: string;
}

interface ReadingsOfJobProps {
  /** Name of the demo job; undefined for a saved one. */
  readonly demo: string | undefined;
  readonly children: ComponentChildren;
}

/** Opens what was run and gauged on the job that is open, for the components inside. */
export function ReadingsOfJob({ demo, children }: ReadingsOfJobProps): VNode {
  const id = useBenchState((state) => state.saved?.id);
  const [loaded, setLoaded] = useState<Loaded | string>();
  useEffect(() => {
    let left = false;
    void load(id, demo).then((next) => {
      if (!left) setLoaded(next);
    });
    return () => {
      left = true;
    };
  }, [id, demo]);
  // the page around it already stands: only its inside waits
  if (typeof loaded === 'string') return <p role="alert">{loaded}</p>;
  if (loaded === undefined || loaded.id !== id) return <p role="status">Opening what was measured.</p>;
  return (
    <Opened key={id} loaded={loaded}>
      {children}
    </Opened>
  );
}

function Opened({
  loaded: { id, saved, start },
  children,
}: {
  readonly loaded: Loaded;
  readonly children: ComponentChildren;
}): VNode | null {
  const { draftName } = useBench();
  const [desk, setDesk] = useState<ReadingsDesk>();
  useEffect(() => {
    const memory = ownMemory();
    // what was entered before the job was saved goes with it
    if (id !== undefined && draftName !== undefined) moveReadings(memory, draftName, id);
    const opened = openReadings(id ?? draftName ?? 'new', saved, start, {
      ...(id === undefined ? {} : { send: (text, basedOn) => saveReadings(id, text, basedOn) }),
      memory,
      later(what, milliseconds) {
        const timer = setTimeout(what, milliseconds);
        return () => clearTimeout(timer);
      },
    });
    setDesk(opened);
    const saveNow = (): void => void opened.saveNow();
    window.addEventListener('online', saveNow);
    return () => {
      window.removeEventListener('online', saveNow);
      saveNow();
      opened.close();
    };
  }, [id, saved, start]);
  if (desk === undefined) return null;
  return (
    <ReadingsContext.Provider value={desk}>
      <SheetContext.Provider value={desk}>
        <LeaveGuard />
        {children}
      </SheetContext.Provider>
    </ReadingsContext.Provider>
  );
}

/** Asks before the page is left while something waits to be saved with the job. */
function LeaveGuard(): null {
  useLeaveGuard(useReadings(({ save }) => save.is === 'failed'));
  return null;
}

/** What is kept of the job, or why it cannot be opened, in words. */
async function load(id: string | undefined, demo: string | undefined): Promise<Loaded | string> {
  if (id !== undefined) {
    const reply = await fetchReadings(id);
    return reply.ok ? { id, saved: reply.value, start: '' } : reply.failure.message;
  }
  const examples = await fetchReadingsExamples();
  const found = examples.ok ? examples.value.find(({ name }) => name === demo) : undefined;
  return { id, saved: undefined, start: found?.text ?? '' };
}
