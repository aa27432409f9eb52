import type { JobAtHand } from '@furrow/engine';
import { useEffect, useState } from 'preact/hooks';
import { type KnowledgePart, startKnowledgeWorker, useClient } from '../../work/index.ts';

/** What came of learning from trials. */
export type Learned = KnowledgePart | { readonly is: 'failure'; readonly message: string };

/**
 * What trials teach and which would teach most for the job that is open, worked out beside the page; undefined while it
 * is on its way for the first time.
 */
export function useReport(trials: string | undefined, job: JobAtHand | undefined): Learned | undefined {
  const [learned, setLearned] = useState<Learned>();
  const client = useClient(startKnowledgeWorker, (event) => {
    if (event.is === 'part') setLearned(event.part);
    if (event.is === 'failure') setLearned(event);
  });
  useEffect(() => {
    if (trials !== undefined) client.ask({ trials, job });
  }, [trials, job]);
  return learned;
}
