import type { BinnedJob, JobSummary } from '@furrow/contract';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { EraseDialog } from '../../ui/dialog/index.ts';
import { PageLink } from '../../ui/route/index.ts';
import { ScrollBox } from '../../ui/table/index.ts';

interface JobTableProps {
  readonly jobs: readonly JobSummary[];
  readonly pathOf: (id: string) => string;
  readonly onDuplicate: (job: JobSummary) => void;
  readonly onBin: (job: JobSummary) => void;
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** The saved jobs, newest first as the store gives them. */
export function JobTable({ jobs, pathOf, onDuplicate, onBin }: JobTableProps): VNode {
  return (
    <section class="panel" aria-labelledby="jobs-title">
      <header class="panel-head">
        <h2 id="jobs-title">Jobs</h2>
      </header>
      <ScrollBox name="Jobs, table">
        <table class="job-table">
          <thead>
            <tr>
              <th scope="col">Job</th>
              <th scope="col">Revision</th>
              <th scope="col">Saved</th>
              <th scope="col">Do</th>
            </tr>
          </thead>
          <tbody>
            {jobs.map((job) => (
              <tr key={job.id}>
                <th scope="row">
                  <PageLink to={pathOf(job.id)}>{job.title}</PageLink>
                  {job.revision === null ? <span class="aside"> a draft with mistakes</span> : null}
                </th>
                <td>{job.revision_number}</td>
                <td>
                  <time dateTime={job.saved_at}>{WHEN.format(new Date(job.saved_at))}</time>
                </td>
                <td class="row-actions">
                  <button
                    type="button"
                    aria-label={`Duplicate ${job.title}`}
                    onClick={() => onDuplicate(job)}
                  >
                    Duplicate
                  </button>
                  <button
                    type="button"
                    aria-label={`Move ${job.title} to the bin`}
                    onClick={() => onBin(job)}
                  >
                    Move to bin
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </section>
  );
}

interface BinTableProps {
  readonly jobs: readonly BinnedJob[];
  readonly onRestore: (job: BinnedJob) => void;
  readonly onErase: (job: BinnedJob) => void;
}

/** The jobs in the bin: each can be taken back, or erased after it was asked. */
export function BinTable({ jobs, onRestore, onErase }: BinTableProps): VNode {
  const [asked, setAsked] = useState<BinnedJob>();
  return (
    <section class="panel" aria-labelledby="bin-title">
      <header class="panel-head">
        <h2 id="bin-title">Bin</h2>
      </header>
      <ul class="bin-list">
        {jobs.map((job) => (
          <li key={job.id}>
            <span>
              {job.title} <span class="aside">put here {WHEN.format(new Date(job.deleted_at))}</span>
            </span>
            <span class="row-actions">
              <button type="button" aria-label={`Restore ${job.title}`} onClick={() => onRestore(job)}>
                Restore
              </button>
              <button type="button" aria-label={`Erase ${job.title} for good`} onClick={() => setAsked(job)}>
                Erase for good
              </button>
            </span>
          </li>
        ))}
      </ul>
      {asked === undefined ? null : (
        <EraseDialog
          what={`“${asked.title}” goes with all its revisions, readings and the record of its papers.`}
          onErase={() => {
            setAsked(undefined);
            onErase(asked);
          }}
          onClose={() => setAsked(undefined)}
        />
      )}
    </section>
  );
}
