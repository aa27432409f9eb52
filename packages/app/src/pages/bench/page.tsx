import type { VNode } from 'preact';
import { JobPage } from '../../job/page/index.ts';
import { DEMO_JOB } from '../../job/state/index.ts';
import { BenchView } from './bench-view.tsx';

interface BenchPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of a demo job, where no saved one is asked for. */
  readonly demo: string | undefined;
}

/** A saved job, or a demo job, on the bench. */
export function BenchPage({ id, demo = DEMO_JOB }: BenchPageProps): VNode {
  return (
    <JobPage id={id} demo={demo} title="Bench">
      <BenchView demo={demo} />
    </JobPage>
  );
}
