import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { JobPage } from '../../job/page/index.ts';
import { useBench } from '../../job/state/index.ts';
import { startRunWorker } from '../../work/index.ts';
import { openKeptRuns } from './kept-runs.ts';
import { openLiveDesk } from './live-run.ts';
import { RunContext, type RunTools } from './run-context.ts';
import { openRunDesk } from './run-desk.ts';
import { RunView } from './run-view.tsx';
import './style.css';

interface RunPageProps {
  readonly id: string | undefined;
  readonly demo: string;
}

/** The log of a run: what happened where on the seam, how deep it should be, and what to do. */
export function RunPage({ id, demo }: RunPageProps): VNode {
  return (
    <JobPage>
      <RunOfBench demo={id === undefined ? demo : undefined}>
        <RunView />
      </RunOfBench>
    </JobPage>
  );
}

/** Keeps the log of the job on the bench as long as the page is open. */
function RunOfBench({
  demo,
  children,
}: {
  /** Name of the demo job; undefined for a saved one. */
  readonly demo: string | undefined;
  readonly children: ComponentChildren;
}): VNode | null {
  const bench = useBench();
  const [tools, setTools] = useState<RunTools>();
  useEffect(() => {
    const desk = openRunDesk(bench, { startWorker: startRunWorker, demo });
    const kept = openKeptRuns(bench, desk);
    const live = openLiveDesk(bench, desk, kept);
    setTools({ desk, kept, live });
    return () => {
      live.close();
      kept.close();
      desk.close();
    };
  }, [bench, demo]);
  if (tools === undefined) return null;
  return <RunContext.Provider value={tools}>{children}</RunContext.Provider>;
}
