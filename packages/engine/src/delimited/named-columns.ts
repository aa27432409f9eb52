import type { Dialect, TextRow } from './dialect.ts';
import { guessColumns } from './guess-columns.ts';
import type { Choice, GivenReading, TableReading } from './table-reading.ts';

/** Rows of the head that are shown [-]. */
const PREVIEW_ROWS = 12;

/** Marks of numbers in files that say themselves what a number is. */
export const PLAIN_MARKS = { decimal: '.', thousands: '' } as const;

/** The head of a file whose values stand under names, and which states no units of its own. */
export interface NamedHead {
  readonly format: 'json_lines' | 'parquet';
  readonly quoting: Pick<Dialect, 'quote' | 'insideQuote'>;
  readonly names: readonly string[];
  readonly data: readonly TextRow[];
  /** Lines of words before them; none where left out. */
  readonly preamble?: readonly string[];
  /** What was chosen beside the columns. */
  readonly choices: readonly Choice[];
}

/** How a file of named values is read: its columns guessed from names and values, or as given. */
export function readingOfNames(
  { format, quoting, names, data, preamble = [], choices }: NamedHead,
  given: GivenReading,
): TableReading {
  const layout = {
    preambleLines: 0,
    headerLines: 0,
    width: names.length,
    names: [...names],
    units: names.map(() => ''),
    data: [...data],
    says: [],
  };
  const columns = guessColumns(layout, PLAIN_MARKS, given);
  const preview = data.slice(0, PREVIEW_ROWS);
  return {
    format,
    encoding: 'utf-8',
    dialect: { delimiter: '', repeated: false, ...quoting },
    marks: PLAIN_MARKS,
    comment: '',
    preambleLines: preamble.length,
    headerLines: 0,
    columns,
    clock: given.clock ?? {},
    preamble: [...preamble],
    preview: preview.map(({ cells }) => cells),
    previewLines: preview.map(({ line }) => line),
    choices: [
      ...choices,
      ...columns.map(({ name, says, asks }) => ({
        about: 'column' as const,
        column: name,
        says,
        sure: !asks,
      })),
    ],
  };
}
