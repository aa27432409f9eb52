/** How the rows of a text are cut into cells. */
export interface Dialect {
  /** The character between two cells; empty where a row is one cell. */
  readonly delimiter: string;
  /** Whether several delimiters in a row count as one, as in tables set out with spaces. */
  readonly repeated: boolean;
  /** The character around cells that hold a delimiter or a line end; empty where there is none. */
  readonly quote: '"' | "'" | '';
  /** How the quote itself is written inside a quoted cell. */
  readonly insideQuote: 'doubled' | 'backslash';
}

/** Delimiters that are looked for, the usual ones first. */
export const DELIMITERS: readonly string[] = [
  ',',
  ';',
  '\t',
  '|',
  ' ',
  ':',
  '^',
  '~',
  '&',
  '#',
  '*',
  '§',
  '!',
  '/',
  '_',
  '-',
];

/** One record of a text. */
export interface TextRow {
  /** Line on which it starts, from 1. */
  readonly line: number;
  /** Lines that it takes, more than one where a quoted cell holds line ends. */
  readonly lines: number;
  readonly cells: readonly string[];
  /** Whether the cell of that place stood in quotes. */
  readonly quoted: readonly boolean[];
}

/** What became of a text. */
export interface SplitText {
  readonly rows: readonly TextRow[];
  /** Whether a quote was opened and not closed before the end. */
  readonly open: boolean;
  /** Quotes inside a cell that did not start with one, or text behind a closing quote [-]. */
  readonly strayQuotes: number;
}

const BLANK = /^[ \t]*$/;

/** Cuts a text into rows and cells. Blank lines give rows without cells. Quadratic in nothing: one walk. */
export function splitText(text: string, dialect: Dialect, rowsMost = Number.POSITIVE_INFINITY): SplitText {
  const { delimiter, repeated, quote, insideQuote } = dialect;
  const rows: TextRow[] = [];
  let stray = 0;
  let line = 1;
  let at = 0;
  const end = text.length;
  const skipsSpace = delimiter !== ' ';
  while (at < end && rows.length < rowsMost) {
    const firstLine = line;
    const cells: string[] = [];
    const quoted: boolean[] = [];
    if (repeated) while (text[at] === delimiter) at += 1;
    for (;;) {
      let from = at;
      if (quote !== '') {
        let look = at;
        if (skipsSpace) while (text[look] === ' ') look += 1;
        if (text[look] === quote) from = look;
      }
      let cell = '';
      let inQuotes = false;
      if (quote !== '' && text[from] === quote) {
        inQuotes = true;
        at = from + 1;
        let piece = at;
        for (;;) {
          if (at >= end) return { rows, open: true, strayQuotes: stray };
          const c = text[at]!;
          if (c === '\n' || (c === '\r' && text[at + 1] !== '\n')) line += 1;
          if (insideQuote === 'backslash' && c === '\\' && at + 1 < end) {
            cell += text.slice(piece, at);
            piece = at + 1;
            at += 2;
            continue;
          }
          if (c === quote) {
            if (insideQuote === 'doubled' && text[at + 1] === quote) {
              cell += text.slice(piece, at + 1);
              at += 2;
              piece = at;
              continue;
            }
            break;
          }
          at += 1;
        }
        cell += text.slice(piece, at);
        at += 1;
        from = at;
      }
      while (at < end) {
        const c = text[at]!;
        if (c === '\n' || c === '\r' || c === delimiter) break;
        if (c === quote && !inQuotes) stray += 1;
        at += 1;
      }
      const rest = text.slice(from, at);
      if (inQuotes) {
        if (!BLANK.test(rest)) {
          stray += 1;
          cell += rest;
        }
      } else cell = rest;
      cells.push(cell);
      quoted.push(inQuotes);
      if (at >= end || text[at] !== delimiter) break;
      at += 1;
      if (repeated) {
        while (text[at] === delimiter) at += 1;
        if (at >= end || text[at] === '\n' || text[at] === '\r') break;
      }
    }
    if (text[at] === '\r') at += text[at + 1] === '\n' ? 2 : 1;
    else if (text[at] === '\n') at += 1;
    const blank = cells.length === 1 && !quoted[0] && BLANK.test(cells[0]!);
    rows.push({ line: firstLine, lines: line - firstLine + 1, cells: blank ? [] : cells, quoted });
    line += 1;
  }
  return { rows, open: false, strayQuotes: stray };
}
