import { kitDifference, readKit, type UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { eraseEarlierKits, fetchKitRevision, fetchKitRevisions } from '../../api/index.ts';
import type { KitDesk } from '../../job/kit/index.ts';
import { HistoryPanel, type HistorySource } from '../../sheet/history/index.ts';
import { useSelected } from '../../ui/store/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The revisions of the kit; one that is put back stands in the form, unsaved, and can be undone. */
export function KitHistory({ desk }: { readonly desk: KitDesk }): VNode | null {
  const units = useUnits();
  const newest = useSelected(desk.store, ({ saved }) => saved?.revision_number ?? 0);
  const source = useMemo(
    (): HistorySource => ({
      revisions: fetchKitRevisions,
      revision: fetchKitRevision,
      eraseEarlier: eraseEarlierKits,
      difference: (before, after) => kitDifferenceWords(before, after, units),
    }),
    [units],
  );
  if (newest < 2) return null;
  return (
    <HistoryPanel
      source={source}
      newest={newest}
      where="back in the form"
      erases={`Every revision before ${newest} of the kit goes.`}
      onPutBack={desk.setText}
    />
  );
}

/** In what two texts of a kit differ, in words; a draft cannot be compared. */
function kitDifferenceWords(before: string, after: string, units: UnitSystem): readonly string[] {
  const [was, is] = [readKit(before), readKit(after)];
  if (!was.ok || !is.ok) return ['One of the two is a draft with mistakes, so they cannot be compared.'];
  const words = kitDifference(was.value, is.value, units).map((difference) => difference.words);
  return words.length === 0 ? ['Nothing differs but the writing.'] : words;
}
