import type { PaperBlock } from '../blocks/index.ts';
import { shownRevision } from './paper-frame.ts';
import type { PaperSubject } from './paper-subject.ts';

/** Says so where the readings were taken by papers of another revision of the job. */
export function mismatchBlocks({ readings, answer }: PaperSubject): PaperBlock[] {
  const named = readings?.readings.job_revision;
  const { revision } = answer.inputs;
  if (named === undefined || revision.startsWith(named.toLowerCase())) return [];
  return [
    {
      kind: 'list',
      tone: 'caution',
      items: [
        `The readings name revision ${shownRevision(named)} of the job; this paper holds them against revision ${shownRevision(revision)}.`,
      ],
    },
  ];
}
