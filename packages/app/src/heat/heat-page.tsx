import type { VNode } from 'preact';
import { JobPage } from '../job-page/index.ts';
import { DEMO_JOB } from '../state/index.ts';
import { HeatView } from './heat-view.tsx';

interface HeatPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** What the plan of a job does to the plate, and what it asks for before and after. */
export function HeatPage({ id, demo = DEMO_JOB }: HeatPageProps): VNode {
  return (
    <JobPage id={id} demo={demo} title="Heat">
      <HeatView demo={demo} />
    </JobPage>
  );
}
