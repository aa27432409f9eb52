import ts from 'typescript';

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

/** Reads the rows `| CODE | meaning | what to do |` of the page. */
export function readErrorRows(page: string): readonly ErrorRow[] {
  return page
    .split('\n')
    .map((line) => /^\|\s*`?([A-Z][A-Z0-9_]*)`?\s*\|(.*)\|(.*)\|\s*$/.exec(line))
    .filter((match) => match !== null)
    .map((match) => ({ code: match[1]!, meaning: match[2]!.trim(), remedy: match[3]!.trim() }));
}
