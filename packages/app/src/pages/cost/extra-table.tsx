import { type CostReport, formatStated } from '@furrow/engine';
import { metalMass, money, sectionArea, workTime } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** What fills the groove again, and what each extra millimetre of depth and width adds to it. */
export function ExtraTable({ cost }: { readonly cost: CostReport }): VNode {
  const units = useUnits();
  const { extra, refill, currency, priced } = cost;
  const length = (mm: number): string => (mm === 0 ? '–' : `+${formatStated(mm, 'mm', units)}`);
  return (
    <ScrollTable
      id="cost-extra"
      title={units === 'inch' ? 'What a larger groove costs' : 'What each extra millimetre costs'}
      note="grinding and refill over the whole seam, at the usual pace; the arc is not in it"
      lead={
        <p class="panel-lead">
          The planned groove takes {metalMass(refill.weld_metal_kg, units)} of weld metal by {refill.process}{' '}
          ({metalMass(refill.filler_kg, units)} of filler), {workTime(refill.arc_time_s)} of arc in{' '}
          {workTime(refill.time_s)}: {sectionArea(refill.gouged_area_mm2, units)} as gouged,{' '}
          {sectionArea(refill.ground_area_mm2, units)} after{' '}
          {formatStated(refill.skin_allowance_mm, 'mm', units)} were ground off.
        </p>
      }
    >
      <ColumnHeads
        names={['Deeper', 'Wider', 'Weld metal', 'More of it', 'Time', ...(priced ? ['Money'] : [])]}
      />
      <tbody>
        {extra.map((each) => (
          <tr key={`${each.deeper_mm} ${each.wider_mm}`}>
            <th scope="row">{length(each.deeper_mm)}</th>
            <td>{length(each.wider_mm)}</td>
            <td>+{metalMass(each.weld_metal_kg, units)}</td>
            <td>+{each.weld_metal_percent.toFixed(0)} %</td>
            <td>+{workTime(each.time_s)}</td>
            {priced ? <td>+{money(each.cost, currency)}</td> : null}
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
