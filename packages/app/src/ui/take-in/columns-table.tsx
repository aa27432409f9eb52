import { COLUMN_QUANTITIES, type ColumnQuantity } from '@furrow/engine';
import type { VNode } from 'preact';
import { ScrollBox } from '../table/index.ts';

/** What a column of a file is read as; `none`: not used. */
export type ColumnUse = ColumnQuantity | 'none';

interface ColumnsTableProps {
  /** Name of the table for who cannot see it. */
  readonly name: string;
  /** Name of the file, where several are shown. */
  readonly file?: string;
  readonly columns: readonly {
    readonly name: string;
    readonly quantity: ColumnQuantity | null;
    readonly unit: string | null;
    /** Why it is read so. */
    readonly says: string;
  }[];
  readonly onUse: (at: number, use: ColumnUse) => void;
}

/** What each column of a file was taken for, and why; a column that was taken wrongly is corrected here. */
export function ColumnsTable({ name, file, columns, onUse }: ColumnsTableProps): VNode {
  return (
    <ScrollBox name={name}>
      <table>
        <thead>
          <tr>
            <th scope="col">Column</th>
            <th scope="col">Read as</th>
            <th scope="col">Unit</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {columns.map((column, at) => (
            <tr key={`${at}${column.name}`}>
              <th scope="row">{column.name === '' ? `column ${at + 1}` : column.name}</th>
              <td>
                <select
                  aria-label={`Column ${at + 1}${file === undefined ? '' : ` of ${file}`} is`}
                  value={column.quantity ?? 'none'}
                  onChange={(event) => onUse(at, event.currentTarget.value as ColumnUse)}
                >
                  {(['none', ...COLUMN_QUANTITIES] as const).map((quantity) => (
                    <option key={quantity} value={quantity}>
                      {quantity === 'none' ? 'not used' : quantity.replaceAll('_', ' ')}
                    </option>
                  ))}
                </select>
              </td>
              <td>{column.unit ?? ''}</td>
              <td class="words">{column.says}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
