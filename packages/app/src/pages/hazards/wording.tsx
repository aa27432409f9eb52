import type { HazardWording } from '@furrow/engine';
import type { VNode } from 'preact';

const CLASSES: Readonly<Record<HazardWording, string>> = {
  'within the figure named': 'wording-within',
  'over the figure named': 'wording-over',
  'short of the figure named': 'wording-over',
  'not covered by the source': 'wording-open',
};

/** One of the wordings; weight and line help, the words alone say it. */
export function Wording({ says }: { readonly says: HazardWording }): VNode {
  return <span class={`wording ${CLASSES[says]}`}>{says}</span>;
}
