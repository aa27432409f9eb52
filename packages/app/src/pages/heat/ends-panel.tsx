import { formatStated, type HeatReport, type StatedUnit, type Written } from '@furrow/engine';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The end of the seam, or the whole of a short one, beside the section: heat flows along the seam as well. */
export function EndsPanel({ ends }: { readonly ends: NonNullable<Written<HeatReport>['ends']> }): VNode {
  const units = useUnits();
  const text = (value: number | null, unit: StatedUnit): string =>
    value === null ? '–' : formatStated(value, unit, units);
  const { t85_s: cooling } = ends;
  const rows = [
    ['Back face, highest', text(ends.back_face_degC, 'degC'), text(ends.section_back_face_degC, 'degC')],
    [
      'Width past Ac1, greatest',
      text(ends.width_past_ac1_mm, 'mm'),
      text(ends.section_width_past_ac1_mm, 'mm'),
    ],
    [
      't8/5',
      cooling === null ? '–' : `${text(cooling.least, 's')} to ${text(cooling.most, 's')}`,
      text(ends.section_t85_s, 's'),
    ],
  ];
  return (
    <ScrollTable
      id="heat-ends"
      title={ends.whole_seam ? 'The whole seam' : 'The end of the seam'}
      note={`heat that flows along the seam too, over ${formatStated(ends.window_mm, 'mm', units)}`}
      lead={<p class="remark">{ends.note}</p>}
    >
      <ColumnHeads names={['What', 'There', 'In the section']} />
      <tbody>
        {rows.map(([what, there, section]) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{there}</td>
            <td>{section}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
