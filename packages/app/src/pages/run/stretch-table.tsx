import type { RunReport, Written } from '@furrow/engine';
import { runRecutTables, runStretchTable } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { BlockPanel, BlockTable } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import type { ShowStretch } from './use-strip-view.ts';

interface StretchTableProps {
  readonly report: Written<RunReport>;
  readonly show: ShowStretch;
}

/** Stretches that are not as they ought to be, with the recut of each. */
export function StretchTable({ report, show }: StretchTableProps): VNode | null {
  const units = useUnits();
  const { stretches } = report;
  if (stretches.length === 0) return null;
  return (
    <BlockPanel
      id="run-stretches"
      table={runStretchTable(report, units)}
      note="Gauge before you recut."
      head={(where, row) => {
        const { from_mm: from, to_mm: to, pass } = stretches[row]!;
        return (
          <button type="button" class="plain" onClick={() => show.place(from, to, pass)}>
            {where}
          </button>
        );
      }}
    >
      {runRecutTables(report, units).map((table) => (
        <details key={table.caption} class="run-recut">
          <summary>{table.caption}</summary>
          <BlockTable table={table} />
        </details>
      ))}
    </BlockPanel>
  );
}
