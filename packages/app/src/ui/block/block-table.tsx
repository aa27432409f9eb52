import type { TableBlock, TableMark } from '@furrow/papers/blocks';
import { boundUnits } from '@furrow/papers/words';
import type { ComponentChildren, VNode } from 'preact';
import { VerdictMark } from '../margins/index.ts';
import { ScrollBox } from '../table/index.ts';

/** Letters from which on a column is broken into lines, and from which on its lines are long [-]. */
const WORDY = 26;
const LONG = 90;

export interface BlockTableProps {
  readonly table: TableBlock;
  /** Makes the first cell of a row a control: handed its text and the number of the row. */
  readonly head?: ((text: string, row: number) => ComponentChildren) | undefined;
  /** What can be done with a row, in a column behind the first. */
  readonly doing?: { readonly title: string; readonly of: (row: number) => ComponentChildren } | undefined;
}

/** A table of a paper on the page, where it scrolls by itself; columns for a hand to write in are left out. */
export function BlockTable({ table, head, doing }: BlockTableProps): VNode {
  const { caption, columns, rows } = table;
  const shown = columns.map((column, at) => ({ column, at })).filter(({ column }) => column.hand !== true);
  const breadths = new Map(
    shown.map(({ at }) => [at, breadthOf(Math.max(0, ...rows.map((row) => (row[at] ?? '').length)))]),
  );
  return (
    <ScrollBox name={`${caption}, table`}>
      <table>
        <thead>
          <tr>
            {shown.map(({ column: { title }, at }, index) => [
              <th key={at} scope="col">
                {title}
              </th>,
              index === 0 && doing !== undefined ? (
                <th key="doing" scope="col">
                  {doing.title}
                </th>
              ) : null,
            ])}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, row) => (
            // a table made anew as a whole has no better name for its rows than their place
            <tr key={row} class={markOf(table, row)}>
              {shown.map(({ at }, index) => {
                const verdict = VERDICTS.find((each) => each === markAt(table, row, at));
                const text = boundUnits(cells[at] ?? '');
                const marked = [markOf(table, row, at), breadths.get(at)];
                const name = marked.filter((each) => each !== undefined).join(' ');
                if (index > 0)
                  return (
                    <td key={at} class={name === '' ? undefined : name}>
                      {verdict === undefined ? null : <VerdictMark verdict={verdict} />} {text}
                    </td>
                  );
                return [
                  <th key={at} scope="row" class={name === '' ? undefined : name}>
                    {head === undefined ? text : head(text, row)}
                  </th>,
                  doing === undefined ? null : <td key="doing">{doing.of(row)}</td>,
                ];
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}

function breadthOf(letters: number): string | undefined {
  if (letters > LONG) return 'words long-words';
  return letters > WORDY ? 'words' : undefined;
}

const VERDICTS = ['holds', 'tight', 'fails'] as const;

function markAt({ marks = [] }: TableBlock, row: number, column?: number): TableMark['mark'] | undefined {
  return marks.find((each) => each.row === row && each.column === column)?.mark;
}

function markOf(table: TableBlock, row: number, column?: number): string | undefined {
  const mark = markAt(table, row, column);
  return mark === undefined ? undefined : `shown-${mark}`;
}
