import { CST, Lexer } from 'yaml';
import { shown, UNPRINTABLE } from './printable.ts';

/** Greatest size of a document [characters]. */
export const DOCUMENT_TEXT_MOST = 200_000;
/** Lines a document may have. */
const LINES_MOST = 10_000;
/** Levels of nesting a document may have; the deepest fields lie at 6. */
export const LEVELS_MOST = 20;
/** References that a document may hold, and places it may name to refer to. */
export const REFERENCES_MOST = 50;

/** Where the shape of a text is one that no document has, and why. */
export interface TextFault {
  /** Place in the text [characters from its start]. */
  readonly offset: number;
  /** What is wrong, as a sentence. */
  readonly message: string;
  /** What stands there, cut short. */
  readonly read: string;
  readonly accepted: string;
}

/** What stands between two separators: whether a colon came yet, and what the part after the last one holds. */
interface Item {
  /** Column at which it begins; undefined while nothing stands there. */
  column?: number;
  colon: boolean;
  holds: 'nothing' | 'plain' | 'collection' | 'reference';
}

/** A bracket that is open. */
interface Bracket {
  readonly map: boolean;
  item: Item;
}

/**
 * Finds what makes a text dangerous to read, before anything is built from it: its size, characters that steer a screen,
 * too many lines, levels or references, and groups, lists or references as the names of fields. Looks at each piece of
 * the text once.
 */
export function textFault(text: string): TextFault | undefined {
  if (text.length > DOCUMENT_TEXT_MOST) {
    const accepted = `at most ${DOCUMENT_TEXT_MOST} characters`;
    return { offset: 0, message: `The file has ${text.length} characters.`, read: '', accepted };
  }
  const unprintable = UNPRINTABLE.exec(text);
  if (unprintable !== null) return unprintableFault(text, unprintable.index);
  const scan = new ShapeScan(text);
  for (const piece of new Lexer().lex(text)) {
    const fault = scan.next(piece);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

class ShapeScan {
  /** Columns of the groups and lists that indentation holds open. */
  readonly #columns: number[] = [];
  readonly #brackets: Bracket[] = [];
  #item = emptyItem();
  #offset = 0;
  #column = 0;
  #lines = 1;
  #anchors = 0;
  #references = 0;
  #atLineStart = true;
  /** Whether the next piece is a value without quotes, which may look like anything. */
  #plainNext = false;

  constructor(readonly text: string) {}

  next(piece: string): TextFault | undefined {
    const type = this.#plainNext ? 'plain' : CST.tokenType(piece);
    this.#plainNext = type === 'scalar';
    // Marks of the lexer, which do not stand in the text.
    if (type === 'scalar' || type === 'doc-mode') return undefined;
    if (type === 'flow-error-end') {
      this.#brackets.length = 0;
      return undefined;
    }
    const fault = this.#take(type);
    this.#advance(piece);
    return fault;
  }

  #advance(piece: string): void {
    this.#offset += piece.length;
    const breaks = piece.split('\n').length - 1;
    this.#lines += breaks;
    this.#column = breaks === 0 ? this.#column + piece.length : piece.length - piece.lastIndexOf('\n') - 1;
    if (piece.endsWith('\n')) this.#atLineStart = true;
  }

  #take(type: CST.TokenType | 'plain' | null): TextFault | undefined {
    if (this.#lines > LINES_MOST) {
      return this.#fault(`The file has more than ${LINES_MOST} lines.`, `at most ${LINES_MOST} lines`);
    }
    if (type === 'space' || type === 'newline' || type === 'comment' || type === 'byte-order-mark') {
      return undefined;
    }
    if (this.#atLineStart) this.#startLine();
    const item = this.#brackets.at(-1)?.item ?? this.#item;
    switch (type) {
      case 'doc-start':
      case 'doc-end':
        this.#columns.length = 0;
        this.#item = emptyItem();
        return undefined;
      case 'anchor':
        this.#anchors += 1;
        item.column ??= this.#column;
        return this.#anchors > REFERENCES_MOST ? this.#tooManyReferences() : undefined;
      case 'alias':
        this.#references += 1;
        if (this.#references > REFERENCES_MOST) return this.#tooManyReferences();
        return this.#hold(item, 'reference');
      case 'flow-map-start':
      case 'flow-seq-start':
        return this.#open(item, type === 'flow-map-start');
      case 'flow-map-end':
      case 'flow-seq-end':
        this.#brackets.pop();
        return undefined;
      case 'comma':
        if (this.#brackets.length > 0) this.#brackets.at(-1)!.item = emptyItem();
        return undefined;
      case 'explicit-key-ind':
        return this.#notAName();
      case 'seq-item-ind':
        return this.#indicator(item, this.#column);
      case 'map-value-ind':
        if (item.holds === 'collection' || item.holds === 'reference') return this.#notAName();
        item.colon = true;
        return this.#indicator(item, item.column ?? this.#column);
      default:
        return this.#hold(item, 'plain');
    }
  }

  /** Ends what lies deeper than the line that begins. */
  #startLine(): void {
    this.#atLineStart = false;
    if (this.#brackets.length > 0) return;
    while ((this.#columns.at(-1) ?? -1) > this.#column) this.#columns.pop();
    this.#item = emptyItem();
  }

  #open(item: Item, map: boolean): TextFault | undefined {
    const fault = this.#hold(item, 'collection');
    if (fault !== undefined) return fault;
    this.#brackets.push({ map, item: emptyItem() });
    return this.#tooDeep();
  }

  #hold(item: Item, holds: Item['holds']): TextFault | undefined {
    // In { } whatever comes before a colon is a name, whether the colon follows or not.
    // So does what follows a whole entry where the comma between them was forgotten.
    const named = this.#brackets.at(-1)?.map === true && (!item.colon || item.holds !== 'nothing');
    if (named && holds !== 'plain') return this.#notAName();
    item.column ??= this.#column;
    item.holds = holds;
    return undefined;
  }

  /** Takes in `-` or `:`, which outside brackets open a level at the column of what they belong to. */
  #indicator(item: Item, column: number): TextFault | undefined {
    item.holds = 'nothing';
    delete item.column;
    if (this.#brackets.length > 0) return undefined;
    if ((this.#columns.at(-1) ?? -1) < column) this.#columns.push(column);
    return this.#tooDeep();
  }

  #tooDeep(): TextFault | undefined {
    if (this.#columns.length + this.#brackets.length <= LEVELS_MOST) return undefined;
    const words = `Here begins level ${LEVELS_MOST + 1} of groups and lists within each other; check brackets and indentation.`;
    return this.#fault(words, `at most ${LEVELS_MOST} levels`);
  }

  #notAName(): TextFault {
    return notAName(this.text, this.#offset);
  }

  #tooManyReferences(): TextFault {
    const words = `The file holds more than ${REFERENCES_MOST} references; write out what they stand for.`;
    return this.#fault(words, `at most ${REFERENCES_MOST} references`);
  }

  #fault(message: string, accepted: string): TextFault {
    return { offset: this.#offset, message, read: readAt(this.text, this.#offset), accepted };
  }
}

/** A group, a list or a reference stands as the name of a field. */
export function notAName(text: string, offset: number): TextFault {
  const message = 'Here a group, a list or a reference stands where the name of a field belongs.';
  const accepted = 'plain text as the name of a field, such as “title: …”';
  return { offset, message, read: readAt(text, offset), accepted };
}

function readAt(text: string, offset: number): string {
  return shown(text.slice(offset, offset + 80).split('\n', 1)[0]);
}

function unprintableFault(text: string, offset: number): TextFault {
  const read = `U+${text.charCodeAt(offset).toString(16).toUpperCase().padStart(4, '0')}`;
  const message = `The file holds the unprintable character ${read}; remove it.`;
  return { offset, message, read, accepted: 'printable text' };
}

function emptyItem(): Item {
  return { colon: false, holds: 'nothing' };
}
