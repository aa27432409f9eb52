import type { SurveySeam } from '@furrow/engine';
import { nextBlock } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { BlockList, BlockTable } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

interface NextPanelProps {
  readonly seam: SurveySeam;
  /** Puts a place into the form. */
  readonly onMeasure: (at_mm: number) => void;
}

/** Where to measure next, the place that takes most risk away per minute first; or that it is enough. */
export function NextPanel({ seam, onMeasure }: NextPanelProps): VNode {
  const block = nextBlock(seam, useUnits());
  return (
    <section class="panel groove-next" aria-labelledby="next-title">
      <h2 id="next-title">Measure next</h2>
      {block.kind === 'table' ? (
        <BlockTable
          table={block}
          head={(place, row) => (
            <button type="button" onClick={() => onMeasure(seam.measure_next[row]!.at_mm)}>
              {place}
            </button>
          )}
        />
      ) : (
        <BlockList blocks={[block]} />
      )}
    </section>
  );
}
