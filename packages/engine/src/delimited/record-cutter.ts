import type { Dialect } from './dialect.ts';
import { type Encoding, textOf } from './encoding.ts';

const [CR, SPACE] = [13, 32];

/** One cell as it stands in a file. */
export interface Cell {
  readonly text: string;
  readonly quoted: boolean;
}

/** By what bytes a file is cut; -1 stands for none. */
export interface CutMarks extends Pick<Dialect, 'repeated' | 'insideQuote'> {
  readonly delimiter: number;
  readonly quote: number;
  /** The line end, or its last byte. */
  readonly eol: number;
  readonly encoding: Encoding;
}

/** A record, cut into its cells. */
export interface CutRecord {
  readonly cells: readonly Cell[];
  /** Place behind it [bytes]. */
  readonly end: number;
  /** Lines that it covers [-]. */
  readonly lines: number;
  /** Whether something stands between a closing quote and the delimiter. */
  readonly strays: boolean;
}

/** Cuts the record that starts at a place; undefined where an open quote runs past what has come. */
export function cutRecord(
  bytes: Uint8Array,
  start: number,
  limit: number,
  by: CutMarks,
): CutRecord | undefined {
  const { delimiter, quote, eol, repeated, insideQuote, encoding } = by;
  const cells: Cell[] = [];
  let lines = 1;
  let strays = false;
  let at = start;
  if (repeated) while (bytes[at] === delimiter) at += 1;
  for (;;) {
    let from = at;
    if (delimiter !== SPACE) while (bytes[from] === SPACE) from += 1;
    let text = '';
    const quoted = quote >= 0 && bytes[from] === quote;
    if (quoted) {
      at = from + 1;
      let piece = at;
      for (;;) {
        if (at >= limit) return undefined;
        const c = bytes[at]!;
        if (c === eol) lines += 1;
        if (insideQuote === 'backslash' && c === 92) {
          text += textOf(bytes, piece, at, encoding);
          piece = at + 1;
          at += 2;
        } else if (c !== quote) at += 1;
        else if (insideQuote === 'doubled' && bytes[at + 1] === quote) {
          text += textOf(bytes, piece, at + 1, encoding);
          at += 2;
          piece = at;
        } else break;
      }
      text += textOf(bytes, piece, at, encoding);
      at += 1;
    }
    const rest = at;
    while (bytes[at] !== delimiter && bytes[at] !== eol) at += 1;
    const to = bytes[at] === eol && bytes[at - 1] === CR && at > rest ? at - 1 : at;
    const behind = textOf(bytes, rest, to, encoding);
    strays ||= quoted && behind.trim() !== '';
    text += behind;
    cells.push({ text, quoted });
    if (bytes[at] === eol) break;
    at += 1;
    if (repeated) {
      while (bytes[at] === delimiter) at += 1;
      if (bytes[at] === eol || (bytes[at] === CR && bytes[at + 1] === eol)) {
        at = bytes[at] === CR ? at + 1 : at;
        break;
      }
    }
  }
  return { cells, end: at + 1, lines, strays };
}
