import type { VNode } from 'preact';
import { JobPage } from '../../job/page/index.ts';
import { DEMO_JOB } from '../../job/state/index.ts';
import { SupplyView } from './supply-view.tsx';
import './style.css';

interface SupplyPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** What power, leads and air make of a job's plan. */
export function SupplyPage({ id, demo = DEMO_JOB }: SupplyPageProps): VNode {
  return (
    <JobPage id={id} demo={demo} title="Power and air">
      <SupplyView id={id} demo={demo} />
    </JobPage>
  );
}
