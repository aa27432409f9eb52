import type { VNode } from 'preact';
import { jobPath, nameAddress } from '../../ui/route/index.ts';
import { JobPages, type JobRoom, SiteHeader } from '../../ui/site/index.ts';
import { useBench, useBenchState } from '../state/index.ts';
import { jobTitle } from './job-title.ts';
import { LeaveGuard } from './leave-guard.tsx';
import { SaveStatus } from './save-status.tsx';

interface JobHeaderProps {
  /** What the page tells of the job, before the job's title. */
  readonly subject: string;
  readonly demo: string;
  readonly at: Exclude<JobRoom, 'bench'>;
}

/** Top of a page of a job on which the job itself can be changed: its title, where it is kept, and saving. */
export function JobHeader({ subject, demo, at }: JobHeaderProps): VNode {
  const bench = useBench();
  const id = useBenchState((state) => state.savedAs?.id);
  const title = useBenchState(jobTitle);
  const conflict = useBenchState((state) => state.save.is === 'failed' && state.save.conflict);
  const save = async (asCopy: boolean): Promise<void> => {
    const saved = await bench.save(asCopy);
    if (saved !== undefined) nameAddress(`${jobPath(saved)}/${at}`);
  };
  return (
    <>
      <LeaveGuard />
      <SiteHeader title={`${subject}: ${title}`} state={<SaveStatus />}>
        <JobPages id={id} demo={demo} at={at} />
        <fieldset class="actions">
          <legend class="unseen">The job as a whole</legend>
          <button type="button" class="primary" onClick={() => void save(false)}>
            Save
          </button>
          {conflict ? (
            <button type="button" onClick={() => void save(true)}>
              Save as copy
            </button>
          ) : null}
        </fieldset>
      </SiteHeader>
    </>
  );
}
