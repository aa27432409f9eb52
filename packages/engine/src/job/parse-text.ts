import { type Document, isScalar, LineCounter, parseDocument, visit, type YAMLMap } from 'yaml';
import type { Issue, Outcome } from '../issue/index.ts';
import { nestedDeeper } from './nesting.ts';
import { shown, UNPRINTABLE } from './printable.ts';

/** Greatest size of a job file [characters]. */
export const JOB_TEXT_MOST = 200_000;
/** Levels of nesting a job may have; its deepest field lies at 4. */
const LEVELS_MOST = 20;
/** Issues of syntax told at once: the first ones tell, the others mostly follow from them. */
const SYNTAX_ISSUES_MOST = 5;

const TOO_DEEP =
  'The file is nested too deeply for a job: check its brackets, its indentation and its references.';

/** A file's text as fields, and what is needed to find the place of each. */
export interface ParsedText {
  readonly raw: Record<string, unknown>;
  readonly document: Document;
  readonly lines: LineCounter;
}

/** Parses the text of a job file, YAML or JSON, into its fields, or tells why it cannot be read. */
export function parseText(text: string): Outcome<ParsedText> {
  if (text.length > JOB_TEXT_MOST) {
    const message = `The file has ${text.length} characters; a job has at most ${JOB_TEXT_MOST}.`;
    return { ok: false, issues: [{ code: 'JOB_TOO_LARGE', message, path: '' }] };
  }
  const unprintable = UNPRINTABLE.exec(text);
  if (unprintable !== null) return unprintableIssue(text, unprintable.index);
  try {
    return parse(text);
  } catch (error) {
    // The library follows nesting by calling itself.
    if (error instanceof RangeError) return refuse(TOO_DEEP);
    throw error;
  }
}

function parse(text: string): Outcome<ParsedText> {
  const lines = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: lines,
    logLevel: 'error',
    prettyErrors: false,
    // Looked for below: the parser compares each key with each other one.
    uniqueKeys: false,
  });
  const syntax = [...document.errors, ...duplicateKeys(document)];
  if (syntax.some(isOverflow)) return refuse(TOO_DEEP);
  if (syntax.length > 0) {
    const issues = syntax.slice(0, SYNTAX_ISSUES_MOST).map((error) => syntaxIssue(error, lines));
    return { ok: false, issues };
  }
  let raw: unknown;
  try {
    raw = document.toJS({ maxAliasCount: 50 });
  } catch (error) {
    // The library tells of bad references by throwing.
    return refuse(
      error instanceof RangeError ? TOO_DEEP : `The file cannot be read: ${(error as Error).message}.`,
    );
  }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return refuse('The file is empty or holds no fields; a job starts with the line “furrow: 1”.');
  }
  if (nestedDeeper(raw, LEVELS_MOST)) return refuse(TOO_DEEP);
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

function refuse(message: string): Outcome<ParsedText> {
  return { ok: false, issues: [{ code: 'JOB_SYNTAX', message, path: '', accepted: 'YAML or JSON' }] };
}

function syntaxIssue(error: SyntaxFault, lines: LineCounter): Issue {
  const { line, col } = lines.linePos(error.pos[0]);
  const several = error.code === 'MULTIPLE_DOCS';
  const words = several ? 'It holds more than one document; keep one job per file.' : error.message;
  return {
    code: 'JOB_SYNTAX',
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

function unprintableIssue(text: string, at: number): Outcome<ParsedText> {
  const before = text.slice(0, at).split(/\r?\n/u);
  const position = { line: before.length, column: before.at(-1)!.length + 1 };
  const point = text.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0');
  const message = `Line ${position.line}: the file holds the unprintable character U+${point}; remove it.`;
  return {
    ok: false,
    issues: [
      { code: 'JOB_SYNTAX', message, path: '', read: `U+${point}`, accepted: 'printable text', position },
    ],
  };
}
