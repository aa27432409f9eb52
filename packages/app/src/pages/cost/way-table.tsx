import type { CostReport, WayReport } from '@furrow/engine';
import { cheaperFrom, money, workTime } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

const RATES: Readonly<Record<WayReport['rate'], string>> = {
  planned: 'planned',
  stated: 'stated by the job',
  assumed: 'assumed',
  missing: 'not known',
};

/** The planned way beside the others, with where each rate comes from. */
export function WayTable({ cost }: { readonly cost: CostReport }): VNode {
  const units = useUnits();
  const { ways, currency, priced } = cost;
  return (
    <ScrollTable
      id="cost-ways"
      title="Other ways to make the groove"
      note="the whole job at medians and usual durations; state your own rates under “Alternatives”"
    >
      <ColumnHeads
        names={[
          'Way',
          'Rate',
          'Groove',
          'Whole job',
          ...(priced ? ['Money', 'Planned way cheaper'] : []),
          'Rests on',
        ]}
      />
      <tbody>
        {ways.map((way) => (
          <tr key={way.way}>
            <th scope="row">{way.title}</th>
            <td>{RATES[way.rate]}</td>
            <td>{way.groove_time_s === null ? '–' : workTime(way.groove_time_s)}</td>
            <td>{way.time_s === null ? '–' : workTime(way.time_s)}</td>
            {priced ? (
              <>
                <td>{way.cost === null ? '–' : money(way.cost, currency)}</td>
                <td>{cheaperFrom(way, units)}</td>
              </>
            ) : null}
            <td class="words">
              {way.note}; <SourceText source={way.source} />
            </td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
