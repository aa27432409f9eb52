import type { VNode } from 'preact';
import { JobPage } from '../../job/page/index.ts';
import { DEMO_JOB } from '../../job/state/index.ts';
import { CostView } from './cost-view.tsx';
import './style.css';

interface CostPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** Time and money of a whole job, and what they rest on. */
export function CostPage({ id, demo = DEMO_JOB }: CostPageProps): VNode {
  return (
    <JobPage id={id} demo={demo} title="Cost and time">
      <CostView demo={demo} />
    </JobPage>
  );
}
