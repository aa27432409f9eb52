import { type FumeReport, formatStated, type SubstanceLimit, type SubstanceReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { ColumnHeads, ScrollBox } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { Wording } from './wording.tsx';

/** Substances to reckon with, their limits by every set, and the additive index of what was measured. */
export function FumeTable({ fume }: { readonly fume: FumeReport }): VNode {
  const units = useUnits();
  const { substances, mixtures } = fume;
  const sets = mixtures.map(({ set }) => set);
  return (
    <>
      <ScrollBox name="Substances to reckon with, table">
        <table>
          <ColumnHeads names={['Substance', 'Why', 'Measured', ...sets]} />
          <tbody>
            {substances.map((substance) => (
              <tr key={substance.name}>
                <th scope="row">{substance.name}</th>
                <td class="words">{substance.why}</td>
                <td>{formatStated(substance.measured_mg_per_m3, 'mg/m3', units)}</td>
                {substance.limits.map((limit) => (
                  <td key={limit.set} class="words">
                    <Limit limit={limit} substance={substance} />
                  </td>
                ))}
              </tr>
            ))}
            <tr>
              <th scope="row">All that was measured</th>
              <td class="words">additive index, at most 1</td>
              <td />
              {mixtures.map(({ set, index, verdict, not_covered }) => (
                <td key={set} class="words">
                  {index === null ? null : <b>{formatStated(index, '-', units)} </b>}
                  <Wording says={verdict} />
                  {index === null || not_covered.length === 0 ? '' : `; without ${not_covered.join(', ')}`}
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </ScrollBox>
      <p class="caption">
        The same air may pass one set of limits and fail another; C marks a ceiling, which is not averaged.
        Air flows are what dilution would need if all of the fume were that substance.
      </p>
    </>
  );
}

function Limit({
  limit,
  substance,
}: {
  readonly limit: SubstanceLimit;
  readonly substance: SubstanceReport;
}): VNode {
  const units = useUnits();
  const { written, source, verdict, flow_if_all_m3_per_min: flow } = limit;
  if (source === null) return <>no limit: not covered by the source</>;
  return (
    <>
      <b>{written}</b>{' '}
      <span class="hazard-source">
        <SourceText source={source} />
      </span>
      {flow === null ? null : <> {formatStated(flow, 'm3/min', units)} of air</>}
      {substance.measured_mg_per_m3 === null ? null : (
        <>
          {' '}
          <Wording says={verdict} />
        </>
      )}
    </>
  );
}
