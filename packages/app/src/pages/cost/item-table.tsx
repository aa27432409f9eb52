import type { CostReport } from '@furrow/engine';
import { byLength, money, perLength, sharePercent } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** What the money is for. */
export function ItemTable({ cost }: { readonly cost: CostReport }): VNode | null {
  const units = useUnits();
  const { items, currency, seam_length_m } = cost;
  if (!cost.priced) return null;
  const unpriced = items.filter(({ part }) => cost.unpriced.includes(part));
  return (
    <ScrollTable
      id="cost-items"
      title="What the money is for"
      note={
        unpriced.length === 0
          ? 'on average'
          : `on average; without a price: ${unpriced.map(({ title }) => title.toLowerCase()).join(', ')}`
      }
    >
      <ColumnHeads names={['For', 'Money', byLength(units), 'Part']} />
      <tbody>
        {items
          .filter((item) => item.cost.mean > 0)
          .map((item) => (
            <tr key={item.part}>
              <th scope="row">{item.title}</th>
              <td>{money(item.cost.mean, currency)}</td>
              <td>{money(perLength(item.cost.mean / seam_length_m, units), currency)}</td>
              <td>{sharePercent(item.cost_share)}</td>
            </tr>
          ))}
      </tbody>
    </ScrollTable>
  );
}
