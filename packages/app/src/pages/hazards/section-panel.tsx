import { formatStated, type HazardRow, type HazardSection } from '@furrow/engine';
import { figureText } from '@furrow/papers/words';
import type { ComponentChildren, VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { ColumnHeads, ScrollBox } from '../../ui/table/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';
import { Wording } from './wording.tsx';

interface SectionPanelProps {
  readonly section: HazardSection;
  /** What belongs to this hazard alone. */
  readonly children: ComponentChildren;
}

/** One hazard: figures, values against rules, what rules ask in words. */
export function SectionPanel({ section, children }: SectionPanelProps): VNode {
  const units = useUnits();
  const { id, title, figures, rows, rules } = section;
  return (
    <section class="panel hazard-section" aria-labelledby={`hazard-${id}-title`}>
      <header class="panel-head">
        <h2 id={`hazard-${id}-title`}>{title}</h2>
      </header>
      {rows.length === 0 ? null : (
        <ScrollBox name={`${title} against the rules, table`}>
          <table>
            <ColumnHeads names={['Rule', 'There is', 'Figure named', 'Verdict', 'Note and source']} />
            <tbody>
              {rows.map((row) => (
                <Row key={row.id} row={row} />
              ))}
            </tbody>
          </table>
        </ScrollBox>
      )}
      {figures.length === 0 ? null : (
        <ul class="hazard-list">
          {figures.map(({ name, value, unit, note, source }) => (
            <li key={name}>
              {name}: <b>{formatStated(value, unit, units)}</b>
              {note === '' ? '' : `, ${note}`} <SmallSource source={source} />
            </li>
          ))}
        </ul>
      )}
      {children}
      {rules.length === 0 ? null : (
        <ul class="hazard-list">
          {rules.map(({ text, source }, index) => (
            <li key={index}>
              <Said sentence={text} /> <SmallSource source={source} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Row({ row }: { readonly row: HazardRow }): VNode {
  const units = useUnits();
  return (
    <tr>
      <th scope="row">{row.rule}</th>
      <td>{formatStated(row.value, row.unit, units)}</td>
      <td>{figureText(row, units)}</td>
      <td class="words">
        <Wording says={row.verdict} />
      </td>
      <td class="words">
        {row.note === '' ? '' : `${row.note.replace(/\.$/u, '')}; `}
        <SourceText source={row.source} />
      </td>
    </tr>
  );
}

function SmallSource({ source }: { readonly source: HazardRow['source'] }): VNode {
  return (
    <span class="hazard-source">
      <SourceText source={source} />
    </span>
  );
}
