import type { VNode } from 'preact';
import { JobPage } from '../../job/page/index.ts';
import { SupplyView } from './supply-view.tsx';
import './style.css';

interface SupplyPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of the demo job, where no saved one is shown. */
  readonly demo: string;
}

/** What power, leads and air make of a job's plan. */
export function SupplyPage({ id, demo }: SupplyPageProps): VNode {
  return (
    <JobPage>
      <SupplyView id={id} demo={demo} />
    </JobPage>
  );
}
