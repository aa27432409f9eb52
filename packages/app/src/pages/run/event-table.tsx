import type { RunReport, Written } from '@furrow/engine';
import { causeBlocks, runEventTable } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { BlockList, BlockPanel } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import type { ShowStretch } from './use-strip-view.ts';

interface EventTableProps {
  readonly report: Written<RunReport>;
  readonly show: ShowStretch;
}

/** Rows of the table at most: more cannot be looked through by eye. */
const ROWS_MOST = 300;

/** Every event with time, place, words and likely cause; what mends each kind, and its next check, below. */
export function EventTable({ report, show }: EventTableProps): VNode | null {
  const units = useUnits();
  const { events } = report;
  if (events.length === 0) return null;
  return (
    <BlockPanel
      id="run-events"
      table={runEventTable(report, units, ROWS_MOST)}
      head={(time, row) => {
        const { start_s: from, end_s: to } = events[row]!;
        return (
          <button type="button" class="plain" onClick={() => show.time(from, to)}>
            {time}
          </button>
        );
      }}
    >
      <BlockList blocks={causeBlocks(report)} />
    </BlockPanel>
  );
}
