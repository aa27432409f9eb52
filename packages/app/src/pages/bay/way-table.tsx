import { formatAmount, type PlaceReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The ways of leads and hoses: what each needs, and the pieces it is made of. */
export function WayTable({ place }: { readonly place: PlaceReport }): VNode {
  const units = useUnits();
  const length = (metres: number): string => formatAmount(metres, 'length', units);
  return (
    <ScrollTable id="ways" title="Ways" note="slack is in what is needed">
      <ColumnHeads names={['Way', 'What', 'Needed', 'Picked', 'Pieces', 'Joints', 'Cleats', 'Lost']} />
      <tbody>
        {place.routes.map((route) => (
          <tr key={`${route.kind} ${route.name}`}>
            <th scope="row">{route.name}</th>
            <td>{route.kind}</td>
            <td>{length(route.needed_m)}</td>
            <td>{length(route.picked_m)}</td>
            <td>{route.pieces.join(' + ')}</td>
            <td>{route.joints}</td>
            <td>{route.cleats}</td>
            <td>{formatAmount(route.loss_W, 'power', units)}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
