import type { VNode } from 'preact';
import { JobPage } from '../../job/page/index.ts';
import { DEMO_JOB } from '../../job/state/index.ts';
import { HazardsView } from './hazards-view.tsx';
import './style.css';

interface HazardsPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** What a job asks of the people around it, and the site that it rests on. */
export function HazardsPage({ id, demo = DEMO_JOB }: HazardsPageProps): VNode {
  return (
    <JobPage id={id} demo={demo} title="Hazards">
      <HazardsView demo={demo} />
    </JobPage>
  );
}
