import type { BinnedJob, Example, JobSummary } from '@furrow/contract';
import type { VNode } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import {
  binJob,
  duplicateJob,
  eraseJob,
  fetchBin,
  fetchExamples,
  fetchJobs,
  type Reply,
  restoreJob,
} from '../../api/index.ts';
import { demoPath, jobPath, PageLink } from '../../ui/route/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { BinTable, JobTable } from './job-table.tsx';

interface Lists {
  readonly jobs: readonly JobSummary[];
  readonly bin: readonly BinnedJob[];
  readonly examples: readonly Example[];
}

/** The saved jobs, and those in the bin. */
export function JobsPage(): VNode {
  const [lists, setLists] = useState<Lists>();
  const [message, setMessage] = useState<string>();
  const [trouble, setTrouble] = useState<string>();
  const load = useCallback(async (): Promise<void> => {
    const [jobs, bin, examples] = await Promise.all([fetchJobs(), fetchBin(), fetchExamples()]);
    if (!jobs.ok) setTrouble(jobs.failure.message);
    else if (!bin.ok) setTrouble(bin.failure.message);
    else if (!examples.ok) setTrouble(examples.failure.message);
    else setLists({ jobs: jobs.value, bin: bin.value, examples: examples.value });
  }, []);
  useEffect(() => void load(), [load]);
  const act = async (action: Promise<Reply<unknown>>, done: string): Promise<void> => {
    setTrouble(undefined);
    const reply = await action;
    if (reply.ok) setMessage(done);
    else setTrouble(reply.failure.message);
    await load();
  };
  return (
    <>
      <SiteHeader />
      <main class="plain-page" id="result" tabIndex={-1}>
        <p class="status" role="status">
          {message ?? (lists === undefined && trouble === undefined ? 'Reading the list.' : '')}
        </p>
        {trouble === undefined ? null : (
          <p class="notice" role="alert">
            {trouble}
          </p>
        )}
        {lists === undefined ? null : lists.jobs.length === 0 ? (
          <p class="empty">
            Nothing saved yet. <PageLink to="/new">Begin a new job</PageLink>, or open a demo job below.
          </p>
        ) : (
          <JobTable
            jobs={lists.jobs}
            pathOf={jobPath}
            onDuplicate={({ id, title }) => void act(duplicateJob(id), `“${title}” was duplicated.`)}
            onBin={({ id, title }) => void act(binJob(id), `“${title}” is in the bin.`)}
          />
        )}
        {lists === undefined || lists.bin.length === 0 ? null : (
          <BinTable
            jobs={lists.bin}
            onRestore={({ id, title }) => void act(restoreJob(id), `“${title}” is back.`)}
            onErase={({ id, title }) => void act(eraseJob(id), `“${title}” is erased.`)}
          />
        )}
        {lists === undefined ? null : (
          <section class="panel" aria-labelledby="demo-title">
            <header class="panel-head">
              <h2 id="demo-title">Demo jobs</h2>
              <p class="caption">our own invention</p>
            </header>
            <ul class="demo-list">
              {lists.examples.map(({ name, title }) => (
                <li key={name}>
                  <PageLink to={demoPath(name)}>{title}</PageLink>
                </li>
              ))}
            </ul>
          </section>
        )}
      </main>
    </>
  );
}
