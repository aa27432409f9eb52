import { type FieldReport, formatStated } from '@furrow/engine';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { ScrollBox } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** Distances from the leads at which the field has fallen to a value. */
export function FieldTable({ field }: { readonly field: FieldReport }): VNode {
  const units = useUnits();
  return (
    <ScrollBox name="Distances from the leads, table">
      <table>
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">For</th>
            <th scope="col">From a single lead</th>
            <th scope="col">From a pair, {formatStated(field.apart_mm, 'mm', units)} apart</th>
            <th scope="col">Source</th>
          </tr>
        </thead>
        <tbody>
          {field.distances.map(({ field_mT, what, single_mm, pair_mm, source }) => (
            <tr key={field_mT}>
              <th scope="row">{formatStated(field_mT, 'mT', units)}</th>
              <td class="words">{what}</td>
              <td>{formatStated(single_mm, 'mm', units)}</td>
              <td>{formatStated(pair_mm, 'mm', units)}</td>
              <td class="words">
                <SourceText source={source} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
