import { type CrewNoiseReport, formatStated } from '@furrow/engine';
import { figureText } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { Wording } from './wording.tsx';

/** The crews' noise side by side against the rules of each family. */
export function CrewTable({ crews }: { readonly crews: readonly CrewNoiseReport[] }): VNode {
  const units = useUnits();
  const rules = crews[0]?.rows ?? [];
  return (
    <ScrollTable
      id="crew-rules"
      title="Noise against the rules"
      note="each rule names its family; the upper end of a band is held against the figure"
    >
      <thead>
        <tr>
          <th scope="col">Rule</th>
          <th scope="col">Figure named</th>
          {crews.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
          <th scope="col">Source</th>
        </tr>
      </thead>
      <tbody>
        {rules.map((rule) => (
          <tr key={rule.id}>
            <th scope="row">{rule.rule}</th>
            <td>{figureText(rule, units)}</td>
            {crews.map(({ name, rows }) => {
              const own = rows.find(({ id }) => id === rule.id);
              return (
                <td key={name} class="words" title={own?.note}>
                  {own === undefined ? (
                    '–'
                  ) : (
                    <>
                      {own.value === null ? null : <b>{formatStated(own.value, own.unit, units)} </b>}
                      <Wording says={own.verdict} />
                    </>
                  )}
                </td>
              );
            })}
            <td class="words">
              <SourceText source={rule.source} />
            </td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
