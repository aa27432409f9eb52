import type { UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { eraseEarlierRevisions, fetchRevision, fetchRevisions } from '../../api/index.ts';
import { HistoryPanel, type HistorySource } from '../../sheet/history/index.ts';
import { keepDraft } from '../../sheet/keep/index.ts';
import { goTo, jobPath } from '../../ui/route/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { differenceWords } from './difference-words.ts';

interface JobHistoryProps {
  readonly id: string;
  /** Number of the newest revision [-]. */
  readonly newest: number;
  readonly units: UnitSystem;
}

/** The revisions of a saved job; one that is put back opens on the bench. */
export function JobHistory({ id, newest, units }: JobHistoryProps): VNode {
  const source = useMemo(
    (): HistorySource => ({
      revisions: () => fetchRevisions(id),
      revision: (number) => fetchRevision(id, number),
      eraseEarlier: () => eraseEarlierRevisions(id),
      difference: (before, after) => differenceWords(before, after, units),
    }),
    [id, units],
  );
  return (
    <HistoryPanel
      source={source}
      newest={newest}
      where="back on the bench"
      erases={`Every revision before ${newest} of this job goes, with the people and prices named in it.`}
      onPutBack={(text) => {
        keepDraft(ownMemory(), id, { text, based_on: newest });
        goTo(jobPath(id), { anew: true });
      }}
    />
  );
}
