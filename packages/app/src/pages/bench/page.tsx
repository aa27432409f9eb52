import type { VNode } from 'preact';
import { JobPage } from '../../job/page/index.ts';
import { BenchView } from './bench-view.tsx';

/** A saved job, or a demo job, on the bench. */
export function BenchPage(): VNode {
  return (
    <JobPage>
      <BenchView />
    </JobPage>
  );
}
