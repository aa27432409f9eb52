import type { VNode } from 'preact';
import { JobHeader, RestoredNotice } from '../job-page/index.ts';
import { ResultStatus } from '../result/index.ts';
import { RibbonView } from '../ribbon/index.ts';

/** The plate while it is gouged: temperatures through time, and what follows from them. */
export function HeatView({ demo }: { readonly demo: string }): VNode {
  return (
    <>
      <JobHeader subject="Heat" demo={demo} at="heat" />
      <main class="wide-page" id="result" tabIndex={-1}>
        <RestoredNotice />
        <ResultStatus />
        <RibbonView />
      </main>
    </>
  );
}
