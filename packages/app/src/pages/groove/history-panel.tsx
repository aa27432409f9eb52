import type { SurveyReport, SurveySeam } from '@furrow/engine';
import { historyBlocks } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { BlockList } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

interface HistoryPanelProps {
  readonly seam: SurveySeam;
  readonly gauge: SurveyReport['inputs'];
}

/** What was said before each recut, and what is said now. */
export function HistoryPanel({ seam, gauge }: HistoryPanelProps): VNode | null {
  const [heading, ...blocks] = historyBlocks(seam, useUnits());
  if (heading?.kind !== 'heading') return null;
  return (
    <section class="panel groove-history" aria-labelledby="groove-history-title">
      <h2 id="groove-history-title">{heading.text}</h2>
      <BlockList blocks={blocks} />
      <p class="aside">
        Uncertainty of a reading: {gauge.gauge_u_from}. The record keeps every reading, with who and when.
      </p>
    </section>
  );
}
