import { COLUMN_QUANTITIES, type ColumnQuantity } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { ScrollBox } from '../../ui/table/index.ts';
import type { UnreadColumn } from '../../work/index.ts';
import { useRunDesk } from './run-context.ts';

interface UnreadColumnsProps {
  readonly columns: readonly UnreadColumn[];
}

/** Columns of a file that does not say what they are, such as one without a header: a person may know. */
export function UnreadColumns({ columns }: UnreadColumnsProps): VNode {
  const desk = useRunDesk();
  const [chosen, setChosen] = useState<Readonly<Record<number, { quantity?: string; unit?: string }>>>({});
  const [interval, setInterval] = useState('');
  const quantityOf = (at: number): string => chosen[at]?.quantity ?? columns[at]?.quantity ?? 'none';
  const change = (at: number, part: { quantity?: string; unit?: string }): void =>
    setChosen({ ...chosen, [at]: { ...chosen[at], ...part } });
  const read = (): void => {
    const seconds = Number(interval.replace(',', '.'));
    desk.correct({
      columns: columns.map(({ name }, at) => ({
        ...(name === '' ? { number: at + 1 } : { name }),
        quantity: quantityOf(at) as ColumnQuantity | 'none',
        ...(chosen[at]?.unit ? { unit: chosen[at].unit } : {}),
      })),
      ...(seconds > 0 && Number.isFinite(seconds) ? { clock: { interval: seconds } } : {}),
    });
  };
  return (
    <>
      <p class="panel-lead">
        The file does not say what its columns are. Where you know it, say so here: what each is and in which
        unit.
      </p>
      <ScrollBox name="Columns that are not known, table">
        <table>
          <thead>
            <tr>
              <th scope="col">Column</th>
              <th scope="col">Its first cells</th>
              <th scope="col">It is</th>
              <th scope="col">Unit</th>
            </tr>
          </thead>
          <tbody>
            {columns.map(({ name, cells }, at) => (
              <tr key={`${at}${name}`}>
                <th scope="row">{name === '' ? `column ${at + 1}` : name}</th>
                <td class="words">{cells.join(', ')}</td>
                <td>
                  <select
                    aria-label={`What column ${at + 1} is`}
                    value={quantityOf(at)}
                    onChange={(event) => change(at, { quantity: event.currentTarget.value })}
                  >
                    {['none', ...COLUMN_QUANTITIES].map((quantity) => (
                      <option key={quantity} value={quantity}>
                        {quantity === 'none' ? 'not used' : quantity.replaceAll('_', ' ')}
                      </option>
                    ))}
                  </select>
                </td>
                <td>
                  <input
                    type="text"
                    aria-label={`Unit of column ${at + 1}`}
                    size={8}
                    value={chosen[at]?.unit ?? ''}
                    onInput={(event) => change(at, { unit: event.currentTarget.value })}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      <div class="log-source-row">
        <label class="live-field">
          <span>Time between two rows [s], where no column is a clock</span>
          <input type="text" value={interval} onInput={(event) => setInterval(event.currentTarget.value)} />
        </label>
        <button type="button" class="primary" onClick={read}>
          Read it so
        </button>
      </div>
    </>
  );
}
