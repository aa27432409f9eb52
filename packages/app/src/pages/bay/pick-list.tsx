import { formatAmount, type PickReport, type PlaceReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';

/** What is picked from stock for this place of the station, and what is left. */
export function PickList({ place }: { readonly place: PlaceReport }): VNode {
  return (
    <>
      <Picks id="picks" title="Pick list" picks={place.picks} />
      <Picks id="left" title="Left in stock" picks={place.left} />
    </>
  );
}

interface PicksProps {
  readonly id: string;
  readonly title: string;
  readonly picks: readonly PickReport[];
}

function Picks({ id, title, picks }: PicksProps): VNode | null {
  const units = useUnits();
  if (picks.length === 0) return null;
  return (
    <ScrollTable id={id} title={title}>
      <ColumnHeads names={['Name', 'Kind', 'Size', 'Length', 'How many']} />
      <tbody>
        {picks.map((pick) => (
          <tr key={`${pick.kind} ${pick.name}`}>
            <th scope="row">{pick.name}</th>
            <td>{pick.kind}</td>
            <td>
              <Said sentence={pick.size} />
            </td>
            <td>{formatAmount(pick.length_m, 'length', units)}</td>
            <td>{pick.count}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
