import { type Document, isScalar, LineCounter, parseDocument, visit, type YAMLMap } from 'yaml';
import type { Issue, Outcome } from '../issue/index.ts';
import type { DocumentCodes } from './document-kind.ts';
import { nestedDeeper } from './nesting.ts';
import { shown, UNPRINTABLE } from './printable.ts';

/** Greatest size of a document [characters]. */
export const DOCUMENT_TEXT_MOST = 200_000;
/** Levels of nesting a document may have; the deepest fields lie at 6. */
const LEVELS_MOST = 20;
/** Issues of syntax told at once: the first ones tell, the others mostly follow from them. */
const SYNTAX_ISSUES_MOST = 5;

/** How a document is called and told of while its text is parsed. */
interface Manner {
  readonly name: string;
  readonly versionField: string;
  readonly codes: DocumentCodes;
}

/** A file's text as fields, and what is needed to find the place of each. */
export interface ParsedText {
  readonly raw: Record<string, unknown>;
  readonly document: Document;
  readonly lines: LineCounter;
}

/** Parses the text of a document, YAML or JSON, into its fields, or tells why it cannot be read. */
export function parseText(text: string, manner: Manner): Outcome<ParsedText> {
  if (text.length > DOCUMENT_TEXT_MOST) {
    const message = `The file has ${text.length} characters; a ${manner.name} has at most ${DOCUMENT_TEXT_MOST}.`;
    return { ok: false, issues: [{ code: manner.codes.tooLarge, message, path: '' }] };
  }
  const unprintable = UNPRINTABLE.exec(text);
  if (unprintable !== null) return unprintableIssue(text, unprintable.index, manner);
  try {
    return parse(text, manner);
  } catch (error) {
    // The library follows nesting by calling itself.
    if (error instanceof RangeError) return refuse(tooDeep(manner), manner);
    throw error;
  }
}

function parse(text: string, manner: Manner): Outcome<ParsedText> {
  const lines = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: lines,
    logLevel: 'error',
    prettyErrors: false,
    // Looked for below: the parser compares each key with each other one.
    uniqueKeys: false,
  });
  const syntax = [...document.errors, ...duplicateKeys(document)];
  if (syntax.some(isOverflow)) return refuse(tooDeep(manner), manner);
  if (syntax.length > 0) {
    const issues = syntax.slice(0, SYNTAX_ISSUES_MOST).map((error) => syntaxIssue(error, lines, manner));
    return { ok: false, issues };
  }
  let raw: unknown;
  try {
    raw = document.toJS({ maxAliasCount: 50 });
  } catch (error) {
    // The library tells of bad references by throwing.
    return refuse(
      error instanceof RangeError ? tooDeep(manner) : `The file cannot be read: ${(error as Error).message}.`,
      manner,
    );
  }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return refuse(
      `The file is empty or holds no fields; a ${manner.name} starts with the line “${manner.versionField}: 1”.`,
      manner,
    );
  }
  if (nestedDeeper(raw, LEVELS_MOST)) return refuse(tooDeep(manner), manner);
  return { ok: true, value: { raw: raw as Record<string, unknown>, document, lines } };
}

interface SyntaxFault {
  readonly message: string;
  readonly pos: readonly [number, number];
  readonly code?: string;
}

/** Keys that stand twice in one group, the later one each. */
function duplicateKeys(document: Document): SyntaxFault[] {
  const faults: SyntaxFault[] = [];
  visit(document, {
    Map(_key, map: YAMLMap) {
      const seen = new Set<string>();
      for (const { key } of map.items) {
        if (!isScalar(key)) continue;
        const name = String(key.value);
        if (seen.has(name)) {
          const at = key.range?.[0] ?? 0;
          faults.push({ message: `“${shown(name)}” stands twice in one group; keep one.`, pos: [at, at] });
        }
        seen.add(name);
      }
    },
  });
  return faults;
}

function tooDeep({ name }: Manner): string {
  return `The file is nested too deeply for a ${name}: check its brackets, its indentation and its references.`;
}

function refuse(message: string, { codes }: Manner): Outcome<ParsedText> {
  return { ok: false, issues: [{ code: codes.syntax, message, path: '', accepted: 'YAML or JSON' }] };
}

function syntaxIssue(error: SyntaxFault, lines: LineCounter, { name, codes }: Manner): Issue {
  const { line, col } = lines.linePos(error.pos[0]);
  const several = error.code === 'MULTIPLE_DOCS';
  const words = several ? `It holds more than one document; keep one ${name} per file.` : error.message;
  return {
    code: codes.syntax,
    message: `Line ${line}: the file is not readable as YAML or JSON. ${words}`,
    path: '',
    accepted: 'YAML or JSON',
    position: { line, column: col },
  };
}

/** The parser tells of nesting it cannot follow as a syntax fault with the engine's own words. */
function isOverflow({ message }: SyntaxFault): boolean {
  return /call stack|recursion/iu.test(message);
}

function unprintableIssue(text: string, at: number, { codes }: Manner): Outcome<ParsedText> {
  const before = text.slice(0, at).split(/\r?\n/u);
  const position = { line: before.length, column: before.at(-1)!.length + 1 };
  const point = text.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0');
  const message = `Line ${position.line}: the file holds the unprintable character U+${point}; remove it.`;
  return {
    ok: false,
    issues: [
      { code: codes.syntax, message, path: '', read: `U+${point}`, accepted: 'printable text', position },
    ],
  };
}
