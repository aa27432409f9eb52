import type { ColumnQuantity } from '@furrow/engine';

/** A column of a table as it is to be read. */
export interface CorrectedColumn {
  readonly name: string;
  readonly quantity: ColumnQuantity | 'none';
  readonly unit: string | null;
}

/** The description of a table by its columns, in one line, as the record keeps it. */
export function columnsText(columns: readonly CorrectedColumn[]): string {
  return JSON.stringify({
    furrow_logger: 1,
    columns: columns.map(({ name, quantity, unit }, index) => ({
      ...(name === '' ? { number: index + 1 } : { name }),
      quantity,
      ...(unit === null || quantity === 'none' ? {} : { unit }),
    })),
  });
}
