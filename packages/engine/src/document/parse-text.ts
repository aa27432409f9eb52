import type { Document, LineCounter } from 'yaml';
import type { Issue, Outcome } from '../issue/index.ts';
import type { DocumentCodes } from './document-kind.ts';
import { documentTree, type Mistake } from './document-tree.ts';
import { nestedDeeper } from './nesting.ts';
import { DOCUMENT_TEXT_MOST, LEVELS_MOST, REFERENCES_MOST, type TextFault } from './text-shape.ts';

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
  const tree = documentTree(text);
  if (!tree.ok) return { ok: false, issues: [shapeIssue(text, tree.fault, manner)] };
  const { document, lines, mistakes } = tree.value;
  if (mistakes.length > 0) {
    const issues = mistakes.slice(0, SYNTAX_ISSUES_MOST).map((error) => syntaxIssue(error, lines, manner));
    return { ok: false, issues };
  }
  let raw: unknown;
  try {
    raw = document.toJS({ maxAliasCount: REFERENCES_MOST });
  } catch (error) {
    // The library tells of bad references by throwing.
    return refuse(`The file cannot be read: ${(error as Error).message}.`, manner);
  }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return refuse(
      `The file is empty or holds no fields; a ${manner.name} starts with the line “${manner.versionField}: 1”.`,
      manner,
    );
  }
  // References can nest deeper than what is written.
  if (nestedDeeper(raw, LEVELS_MOST)) return refuse(tooDeep(manner), manner);
  return { ok: true, value: { raw: raw as Record<string, unknown>, document, lines } };
}

function tooDeep({ name }: Manner): string {
  return `The file is nested too deeply for a ${name}: check its brackets, its indentation and its references.`;
}

function refuse(message: string, { codes }: Manner): Outcome<ParsedText> {
  return { ok: false, issues: [{ code: codes.syntax, message, path: '', accepted: 'YAML or JSON' }] };
}

function syntaxIssue(error: Mistake, lines: LineCounter, { name, codes }: Manner): Issue {
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

function shapeIssue(text: string, fault: TextFault, { codes }: Manner): Issue {
  const before = text.slice(0, fault.offset).split(/\r?\n/u);
  const position = { line: before.length, column: before.at(-1)!.length + 1 };
  return {
    code: codes.syntax,
    message: `Line ${position.line}: ${fault.message.charAt(0).toLowerCase()}${fault.message.slice(1)}`,
    path: '',
    ...(fault.read === '' ? {} : { read: fault.read }),
    accepted: fault.accepted,
    position,
  };
}
