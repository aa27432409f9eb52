import ts from 'typescript';
import { documentCodes } from '../packages/engine/src/document/index.ts';

/** How issue codes are used in one source file. */
export interface CodeUse {
  /** Every text in the file that could be a code. */
  readonly mentioned: ReadonlySet<string>;
  /** Texts given as a member called `code`. */
  readonly given: ReadonlySet<string>;
}

/** One row of the table in docs/errors.md. */
export interface ErrorRow {
  readonly code: string;
  readonly meaning: string;
  readonly remedy: string;
}

const CODE = /^[A-Z][A-Z0-9]*(_[A-Z0-9]+)+$/;

/** Finds the codes in the text of a source file; comments do not count as use. */
export function readCodeUse(text: string): CodeUse {
  const file = ts.createSourceFile('source.tsx', text, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const mentioned = new Set<string>();
  const given = new Set<string>();
  const collect = (node: ts.Node, into: Set<string>): void => {
    if (ts.isStringLiteralLike(node) && CODE.test(node.text)) into.add(node.text);
    for (const code of codesOfKind(node)) into.add(code);
    ts.forEachChild(node, (child) => collect(child, into));
  };
  const walk = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node) && node.name.getText() === 'code') collect(node.initializer, given);
    ts.forEachChild(node, walk);
  };
  collect(file, mentioned);
  walk(file);
  return { mentioned, given };
}

/** The codes of a kind of document, where they are named by how they begin. */
function codesOfKind(node: ts.Node): readonly string[] {
  if (!ts.isCallExpression(node) || node.expression.getText() !== 'documentCodes') return [];
  const [start] = node.arguments;
  if (start === undefined || !ts.isStringLiteralLike(start)) return [];
  return Object.values(documentCodes(start.text as Parameters<typeof documentCodes>[0]));
}

/** Reads the rows `| CODE | meaning | what to do |` of the page. */
export function readErrorRows(page: string): readonly ErrorRow[] {
  return page
    .split('\n')
    .map((line) => /^\|\s*`?([A-Z][A-Z0-9_]*)`?\s*\|(.*)\|(.*)\|\s*$/.exec(line))
    .filter((match) => match !== null)
    .map((match) => ({ code: match[1]!, meaning: match[2]!.trim(), remedy: match[3]!.trim() }));
}
