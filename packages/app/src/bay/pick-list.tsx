import { formatAmount, type PickReport, type PlaceReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { ScrollTable } from '../table/index.ts';
import { useUnits } from '../theme/index.ts';

/** What is picked from stock for this place of the station, way by way, and what is left. */
export function PickList({ place }: { readonly place: PlaceReport }): VNode {
  const units = useUnits();
  const length = (metres: number): string => formatAmount(metres, 'length', units);
  return (
    <>
      <ScrollTable id="ways" title="Ways" note="slack is in what is needed">
        <thead>
          <tr>
            {['What', 'From', 'To', 'Needed', 'Picked', 'Pieces', 'Joints', 'Cleats', 'Lost'].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {place.routes.map((route) => (
            <tr key={`${route.name} ${route.from} ${route.to}`}>
              <th scope="row">{route.name}</th>
              <td>{route.from}</td>
              <td>{route.to}</td>
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
      <Picks id="picks" title="Pick list" picks={place.picks} length={length} />
      <Picks id="left" title="Left in stock" picks={place.left} length={length} />
    </>
  );
}

interface PicksProps {
  readonly id: string;
  readonly title: string;
  readonly picks: readonly PickReport[];
  readonly length: (metres: number) => string;
}

function Picks({ id, title, picks, length }: PicksProps): VNode | null {
  if (picks.length === 0) return null;
  return (
    <ScrollTable id={id} title={title}>
      <thead>
        <tr>
          {['Name', 'Kind', 'Size', 'Length', 'How many'].map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {picks.map((pick) => (
          <tr key={`${pick.kind} ${pick.name} ${pick.size}`}>
            <th scope="row">{pick.name}</th>
            <td>{pick.kind}</td>
            <td>{pick.size}</td>
            <td>{length(pick.length_m)}</td>
            <td>{pick.count}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
