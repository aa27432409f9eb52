import type { SurveySeam } from '@furrow/engine';
import { measuresList, stretchTable, wantedBlock } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { BlockList, BlockPanel } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** Stretches of the seam with the verdict of the rule and the plain one beside it; width and plate left below. */
export function StretchPanel({ seam }: { readonly seam: SurveySeam }): VNode {
  const units = useUnits();
  return (
    <BlockPanel
      id="groove-stretches"
      title="Stretches"
      table={stretchTable(seam, units)}
      lead={<BlockList blocks={[wantedBlock(seam, units)]} />}
    >
      <BlockList blocks={[measuresList(seam, units)]} />
    </BlockPanel>
  );
}
