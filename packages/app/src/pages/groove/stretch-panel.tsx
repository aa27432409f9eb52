import type { SurveySeam } from '@furrow/engine';
import { gaugeLength, SURVEY_VERDICT_WORDS, seamPlace, stretchWords } from '@furrow/papers';
import type { VNode } from 'preact';
import { VerdictMark } from '../../ui/margins/index.ts';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

const MARKS = { holds: 'holds', in_doubt: 'tight', fails: 'fails' } as const;

/** Stretches of the seam with the verdict of the rule and the plain one beside it. */
export function StretchPanel({ seam }: { readonly seam: SurveySeam }): VNode {
  const units = useUnits();
  const { least_mm, most_mm } = seam.limits;
  const wanted = `Wanted: ${gaugeLength(least_mm, units)} to ${gaugeLength(most_mm, units)}.`;
  return (
    <ScrollTable
      id="groove-stretches"
      title="Stretches"
      lead={
        <p class="panel-lead">
          {wanted} {seam.rule}
        </p>
      }
    >
      <ColumnHeads names={['From', 'To', 'With guard band', 'Simple acceptance', 'How sure']} />
      <tbody>
        {seam.stretches.map((stretch) => (
          <tr key={stretch.from_mm}>
            <th scope="row">{seamPlace(stretch.from_mm, units)}</th>
            <td>{seamPlace(stretch.to_mm, units)}</td>
            <td class="words">
              <VerdictMark verdict={MARKS[stretch.verdict]} /> {SURVEY_VERDICT_WORDS[stretch.verdict]}
            </td>
            <td>{stretch.simple_acceptance}</td>
            <td class="words">{stretchWords(stretch)}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
