import { type CostChangeReport, type CostReport, formatStated } from '@furrow/engine';
import { difference, money, workTime } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';

interface ChangeTableProps {
  readonly changes: readonly CostChangeReport[];
  /** Whether more are to come. */
  readonly trying: boolean;
  readonly cost: Pick<CostReport, 'currency' | 'priced'>;
}

/** What changes of job and kit would do, each planned anew. */
export function ChangeTable({ changes, trying, cost: { currency, priced } }: ChangeTableProps): VNode {
  const units = useUnits();
  return (
    <ScrollTable
      id="cost-changes"
      title="What a change would do"
      note={
        trying
          ? 'planning anew, one change after the other'
          : 'each planned anew, by the objective of the job'
      }
    >
      <ColumnHeads
        names={['Change', 'Time', ...(priced ? ['Money'] : []), 'Planned then', 'What is changed']}
      />
      <tbody>
        {changes.map((change) => (
          <tr key={change.id}>
            <th scope="row">{change.title}</th>
            <td>{change.time_change_s === null ? '–' : difference(change.time_change_s, workTime)}</td>
            {priced ? (
              <td>
                {change.cost_change === null
                  ? '–'
                  : difference(change.cost_change, (amount) => money(amount, currency))}
              </td>
            ) : null}
            <td>
              {change.setting === null
                ? OUTCOMES[change.outcome]
                : `${formatStated(change.setting.electrode_diameter_mm, 'mm', units, 'length')}, ${formatStated(change.setting.current_A, 'A', units)}, ${change.setting.passes} ${change.setting.passes === 1 ? 'pass' : 'passes'}`}
            </td>
            <td class="words">
              <Said sentence={change.says} />
            </td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}

const OUTCOMES: Readonly<Record<CostChangeReport['outcome'], string>> = {
  replanned: 'planned',
  no_plan: 'no plan',
  not_tried: 'not tried',
};
