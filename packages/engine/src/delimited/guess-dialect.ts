import { type CellType, cellType } from './cell-type.ts';
import { DELIMITERS, type Dialect, type SplitText, splitText, type TextRow } from './dialect.ts';

/** A dialect and why it was chosen. */
export interface GuessedDialect {
  readonly dialect: Dialect;
  readonly says: string;
  /** Whether nothing else came near. */
  readonly sure: boolean;
}

/** Rows that are scored [-]. */
const ROWS_MOST = 400;

/** Characters of the head that are scored [-]. */
const CHARACTERS_MOST = 48_000;

/** What a cell of a type says for its delimiter: numbers and moments say most, a text that holds other delimiters nothing. */
const WEIGHT: Readonly<Record<CellType, number>> = {
  number: 1,
  moment: 1,
  word: 0.95,
  text: 0.8,
  empty: 0.6,
  unknown: 0.25,
};

/** How readily a character is taken for the delimiter; those that stand in numbers, times and words need much more than the usual ones. */
const READINESS: Readonly<Record<string, number>> = {
  ',': 1,
  ';': 1,
  '\t': 1,
  '|': 1,
  '^': 0.9,
  '~': 0.9,
  '§': 0.9,
  ' ': 0.75,
  '#': 0.6,
  '&': 0.6,
  '*': 0.6,
  '!': 0.6,
  ':': 0.5,
  _: 0.35,
  '-': 0.35,
  '/': 0.35,
};

/** Share by which a row before the table counts less than one in it: many loggers write a few lines of their own first [-]. */
const BEFORE_TABLE = 0.6;

interface Scored {
  readonly dialect: Dialect;
  readonly score: number;
  /** Rows that are alike, and how many were looked at. */
  readonly alike: number;
  readonly rows: number;
  readonly cells: number;
}

/** Whether the first row is words with another usual delimiter between them: the header of another dialect. */
function headedOtherwise({ cells }: TextRow, { delimiter }: Dialect): boolean {
  return (
    cells.length === 1 &&
    [',', ';', '\t', '|'].some(
      (other) =>
        other !== delimiter &&
        /^[\p{L}\p{N}_]+$/u.test(cells[0]!.replaceAll(other, '')) &&
        cells[0]!.includes(other),
    )
  );
}

/**
 * Score of one dialect: how much of the text falls into rows of one pattern, times how much of their cells is of a
 * type that people write. Rows before and behind the table may look otherwise, so rows of the commonest width count,
 * and a long unbroken run of them more than the same number scattered.
 */
function score(split: SplitText, dialect: Dialect): Scored {
  const rows = split.rows.filter(({ cells }) => cells.length > 0);
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  let width = 0;
  let alike = 0;
  for (const [cells, count] of counts) {
    if (cells < 2) continue;
    if (count * (1 - 1 / cells) > alike * (1 - 1 / Math.max(width, 2))) {
      width = cells;
      alike = count;
    }
  }
  if (width === 0) return { dialect, score: 0, alike: 0, rows: rows.length, cells: 1 };
  let run = 0;
  let longest = 0;
  let start = 0;
  let weight = 0;
  let cellsSeen = 0;
  const columnTypes = new Map<number, Map<CellType, number>>();
  for (const [index, { cells, quoted }] of rows.entries()) {
    if (cells.length !== width) {
      run = 0;
      continue;
    }
    run += 1;
    if (run > longest) {
      longest = run;
      start = index + 1 - run;
    }
    cells.forEach((cell, column) => {
      const type = cellType(cell, quoted[column]);
      weight += WEIGHT[type];
      cellsSeen += 1;
      const types = columnTypes.get(column) ?? new Map<CellType, number>();
      types.set(type, (types.get(type) ?? 0) + 1);
      columnTypes.set(column, types);
    });
  }
  const otherHeader = headedOtherwise(rows[0]!, dialect);
  const looked = rows.length - (otherHeader ? 0 : BEFORE_TABLE * start);
  const consistency = Math.min(1, (0.6 * alike + 0.4 * longest) / looked);
  // columns whose cells are of one type, but for a header
  let uniform = 0;
  for (const types of columnTypes.values()) {
    const most = Math.max(...types.values());
    uniform += most / alike;
  }
  const uniformity = uniform / width;
  const faults = split.strayQuotes + (split.open ? rows.length : 0);
  const quoting = 1 / (1 + (4 * faults) / Math.max(rows.length, 1));
  // empty cells between tabs are common, tables set out with several tabs are not
  const setOut = dialect.repeated && dialect.delimiter === '\t' ? 0.5 : 1;
  const readiness = setOut * (READINESS[dialect.delimiter] ?? 0.5);
  // one or two rows are enough for a usual delimiter only
  const enough =
    readiness > 0.9 || (alike >= 3 && alike >= 0.7 * rows.length) ? 1 : readiness > 0.7 ? 0.5 : 0.1;
  const fromFirst = rows[0]!.cells.length === width ? 1 : otherHeader ? 0.4 : 0.7;
  const value =
    consistency ** 2 *
    (weight / cellsSeen) ** 2 *
    (0.5 + 0.5 * uniformity) *
    (1 - 1 / (width + 0.5)) *
    quoting *
    readiness *
    enough *
    fromFirst;
  return { dialect, score: value, alike, rows: rows.length, cells: width };
}

/** How readily a text is taken for one column, whose every row is alike whatever stands in it [-]. */
const ONE_COLUMN = 0.3;

/** Score of one column: the share of its cells that are of a type. */
function scoreOneColumn(text: string): number {
  const { rows } = splitText(
    text,
    { delimiter: '', repeated: false, quote: '"', insideQuote: 'doubled' },
    ROWS_MOST,
  );
  const cells = rows.flatMap((row) => (row.cells.length > 0 ? [cellType(row.cells[0]!, row.quoted[0])] : []));
  const weight = cells.reduce((sum, type) => sum + WEIGHT[type], 0) / Math.max(cells.length, 1);
  return ONE_COLUMN * weight ** 2;
}

/** Whether a character stands at the edges of cells as a quote does. */
function looksQuoting(text: string, quote: '"' | "'"): boolean {
  return new RegExp(`(?:^|[^\\p{L}\\p{N}])${quote}[^\\n\\r]*?${quote}(?:[^\\p{L}\\p{N}]|$)`, 'mu').test(text);
}

function escapeOf(text: string, quote: '"' | "'"): Dialect['insideQuote'] {
  const backslashed = text.split(`\\${quote}`).length - 1;
  const doubled = text.split(`${quote}${quote}`).length - 1;
  return backslashed > 0 && backslashed > doubled ? 'backslash' : 'doubled';
}

const NAMES: Readonly<Record<string, string>> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
  ' ': 'space',
  ':': 'colon',
};

/** The delimiter as a word. */
function delimiterName(delimiter: string): string {
  return delimiter === '' ? 'none' : (NAMES[delimiter] ?? `"${delimiter}"`);
}

/**
 * The dialect of a text by the pattern of its rows and the types of its cells (van den Burg, Nazabal, Sutton,
 * arXiv 1811.11242; table uniformity as in doi 10.3233/DS-240062), scored over the head.
 */
export function guessDialect(head: string, given: Partial<Dialect> = {}): GuessedDialect {
  const text = wholeLines(head);
  const quotes: Dialect['quote'][] =
    given.quote !== undefined
      ? [given.quote]
      : ([
          (['"', "'"] as const).filter((quote) => looksQuoting(text, quote)),
          '',
        ].flat() as Dialect['quote'][]);
  const delimiters =
    given.delimiter !== undefined ? [given.delimiter] : DELIMITERS.filter((one) => text.includes(one));
  const scored: Scored[] = [];
  for (const quote of quotes) {
    const insideQuote = given.insideQuote ?? (quote === '' ? 'doubled' : escapeOf(text, quote));
    for (const delimiter of delimiters) {
      const spaced = delimiter === ' ' || delimiter === '\t';
      const ways =
        given.repeated !== undefined
          ? [given.repeated]
          : spaced && text.includes(delimiter.repeat(2))
            ? [true, false]
            : [false];
      for (const repeated of ways) {
        const dialect: Dialect = { delimiter, repeated, quote, insideQuote };
        scored.push(score(splitText(text, dialect, ROWS_MOST), dialect));
      }
    }
  }
  // a quote that changes nothing is not called one
  scored.sort((a, b) => b.score - a.score);
  const [best, ...others] = scored;
  if (best === undefined || (given.delimiter === undefined && best.score < scoreOneColumn(text))) {
    const quote = quotes[0] ?? '';
    return {
      dialect: { delimiter: '', repeated: false, quote, insideQuote: given.insideQuote ?? 'doubled' },
      says: 'no character cuts the rows into the same number of cells: one column',
      sure: false,
    };
  }
  const next = others.find(({ dialect }) => dialect.delimiter !== best.dialect.delimiter);
  const name = delimiterName(best.dialect.delimiter);
  const share = `${best.alike} of ${best.rows} rows have ${best.cells} cells with a ${name} between them`;
  const second =
    next && next.score > 0.1 * best.score
      ? `; ${delimiterName(next.dialect.delimiter)} would give ${next.alike} of ${next.rows} rows with ${next.cells}`
      : '';
  return {
    dialect: best.dialect,
    says: given.delimiter === undefined ? share + second : `${name} as given; ${share}`,
    sure: next === undefined || next.score < 0.6 * best.score,
  };
}

/** The head without a last line that its end may have cut. */
function wholeLines(head: string): string {
  if (head.length <= CHARACTERS_MOST) return head;
  const cut = head.slice(0, CHARACTERS_MOST);
  const end = Math.max(cut.lastIndexOf('\n'), cut.lastIndexOf('\r'));
  return end > 0 ? cut.slice(0, end + 1) : cut;
}
