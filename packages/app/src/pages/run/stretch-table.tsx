import type { RunReport, Written } from '@furrow/engine';
import { placeWords, runRecutWords } from '@furrow/papers';
import type { VNode } from 'preact';
import { ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import type { ShowStretch } from './use-strip-view.ts';

interface StretchTableProps {
  readonly report: Written<RunReport>;
  readonly show: ShowStretch;
}

/** Stretches that are not as they ought to be, with the recut of each. */
export function StretchTable({ report, show }: StretchTableProps): VNode | null {
  const units = useUnits();
  if (report.stretches.length === 0) return null;
  return (
    <ScrollTable id="run-stretches" title="Stretches to look at" note="Gauge before you recut.">
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">What</th>
          <th scope="col">What to do</th>
          <th scope="col">Recut</th>
        </tr>
      </thead>
      <tbody>
        {report.stretches.map((each) => (
          <tr key={`${each.kind}${each.from_mm}`}>
            <th scope="row">
              <button
                type="button"
                class="plain"
                onClick={() => show.place(each.from_mm, each.to_mm, each.pass)}
              >
                {placeWords(each.from_mm, each.to_mm, units)}
              </button>
            </th>
            <td>{each.kind}</td>
            <td class="words">{each.says}</td>
            <td class="words">{runRecutWords(each.recut, units)}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
