import { readingsDifference, readReadings, type UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { fetchReadingsRevision, fetchReadingsRevisions } from '../../api/index.ts';
import { useReadings, useReadingsDesk } from '../../job/readings/index.ts';
import { HistoryPanel, type HistorySource } from '../../sheet/history/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The revisions of the record, each with its difference in words; one that is put back makes a new one. */
export function RevisionPanel({ id }: { readonly id: string }): VNode | null {
  const desk = useReadingsDesk();
  const units = useUnits();
  const newest = useReadings((state) => state.revision);
  const source = useMemo(
    (): HistorySource => ({
      revisions: () => fetchReadingsRevisions(id),
      revision: (number) => fetchReadingsRevision(id, number),
      difference: (before, after) => differenceWords(before, after, units),
    }),
    [id, units],
  );
  if (newest < 2) return null;
  return <HistoryPanel source={source} newest={newest} where="back" savesItself onPutBack={desk.setText} />;
}

/** In what two texts of a record differ, in words; a draft cannot be compared. */
function differenceWords(before: string, after: string, units: UnitSystem): readonly string[] {
  const [was, is] = [readReadings(before), readReadings(after)];
  if (!was.ok || !is.ok) return ['One of the two is a draft with mistakes, so they cannot be compared.'];
  const words = readingsDifference(was.value, is.value, units).map((difference) => difference.words);
  return words.length === 0 ? ['Nothing differs but the writing.'] : words;
}
