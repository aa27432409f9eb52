import type { RunReport, Written } from '@furrow/engine';
import { runFigures } from '@furrow/papers';
import type { VNode } from 'preact';
import { Figure } from '../../ui/figure/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** Sums of the run in big numbers; what the file cannot give is said to be unknown. */
export function RunFigures({ report }: { readonly report: Written<RunReport> }): VNode {
  const units = useUnits();
  return (
    <dl class="headline run-figures">
      {runFigures(report, units).map(({ label, value, note = '' }) => (
        <Figure key={label} name={label} value={value} note={note} />
      ))}
    </dl>
  );
}
