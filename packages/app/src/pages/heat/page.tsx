import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { JobPage } from '../../job/page/index.ts';
import { useBench } from '../../job/state/index.ts';
import { startHeatWorker } from '../../work/index.ts';
import { HeatContext } from './heat-context.ts';
import { type HeatDesk, openHeatDesk } from './heat-desk.ts';
import { HeatView } from './heat-view.tsx';
import './style.css';

/** What the plan of a job does to the plate, and what it asks for before and after. */
export function HeatPage(): VNode {
  return (
    <JobPage>
      <HeatOfBench>
        <HeatView />
      </HeatOfBench>
    </JobPage>
  );
}

/** Has the heat of the job on the bench solved as long as the page is open. */
function HeatOfBench({ children }: { readonly children: ComponentChildren }): VNode | null {
  const bench = useBench();
  const [desk, setDesk] = useState<HeatDesk>();
  useEffect(() => {
    const opened = openHeatDesk(bench, { startWorker: startHeatWorker, later });
    setDesk(opened);
    return opened.close;
  }, [bench]);
  if (desk === undefined) return null;
  return <HeatContext.Provider value={desk}>{children}</HeatContext.Provider>;
}

function later(run: () => void, milliseconds: number): () => void {
  const timer = setTimeout(run, milliseconds);
  return () => clearTimeout(timer);
}
