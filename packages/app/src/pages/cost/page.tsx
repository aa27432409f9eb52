import type { VNode } from 'preact';
import { JobPage } from '../../job/page/index.ts';
import { CostView } from './cost-view.tsx';
import './style.css';

/** Time and money of a whole job, and what they rest on. */
export function CostPage(): VNode {
  return (
    <JobPage>
      <CostView />
    </JobPage>
  );
}
