import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import ts from 'typescript';
import { readDocComment } from './doc-comment.ts';

/** One public function of a room, as its doc comment tells it. */
export interface HandbookEntry {
  readonly name: string;
  /** What it answers. */
  readonly summary: string;
  /** Inputs with unit and range. */
  readonly inputs: readonly { readonly name: string; readonly text: string }[];
  readonly returns: string;
  readonly source: string;
  /** Worked numbers, each run as a test. */
  readonly worked: readonly string[];
}

/** One room of the engine. */
export interface HandbookRoom {
  readonly room: string;
  /** What it answers, from the table of rooms. */
  readonly answers: string;
  readonly entries: readonly HandbookEntry[];
}

/** Reads the handbook out of the engine's doc comments; rooms in the order of the table in ARCHITECTURE.md. */
export function readHandbook(root: string): HandbookRoom[] {
  const engine = join(root, 'packages', 'engine', 'src');
  return roomTable(readFileSync(join(root, 'ARCHITECTURE.md'), 'utf8')).flatMap(({ room, answers }) => {
    const index = join(engine, room, 'index.ts');
    return existsSync(index) ? [{ room, answers, entries: entriesOf(index) }] : [];
  });
}

/** Rooms and what each answers, as the table of rooms says. */
function roomTable(text: string): { readonly room: string; readonly answers: string }[] {
  const [, table = ''] = text.split('## Rooms of the engine');
  return [...table.split('\n## ')[0]!.matchAll(/^\| `(\w+)`\s*\| (.*?)\s*\|/gmu)].map(
    ([, room = '', answers = '']) => ({ room, answers }),
  );
}

/** Functions that an index file exports, in its order, whatever number of files they come through. */
function entriesOf(index: string): HandbookEntry[] {
  const file = ts.createSourceFile(index, readFileSync(index, 'utf8'), ts.ScriptTarget.Latest, true);
  return file.statements.flatMap((statement): HandbookEntry[] => {
    if (!ts.isExportDeclaration(statement) || statement.moduleSpecifier === undefined) return [];
    const from = join(dirname(index), (statement.moduleSpecifier as ts.StringLiteral).text);
    if (!existsSync(from)) return [];
    const named = statement.exportClause;
    const found = from.endsWith('index.ts') ? entriesOf(from) : functionsOf(from);
    if (named === undefined || !ts.isNamedExports(named)) return found;
    const names = new Set(named.elements.map((element) => (element.propertyName ?? element.name).text));
    return found.filter(({ name }) => names.has(name));
  });
}

function functionsOf(path: string): HandbookEntry[] {
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  return file.statements.flatMap((statement) => {
    const name = ts.isFunctionDeclaration(statement)
      ? statement.name?.text
      : ts.isVariableStatement(statement)
        ? statement.declarationList.declarations[0]?.name.getText()
        : undefined;
    const comment = ts.getJSDocCommentsAndTags(statement).filter(ts.isJSDoc).at(-1);
    if (name === undefined || comment === undefined) return [];
    const { summary, tags } = readDocComment(comment.getText());
    const textsOf = (tag: string): string[] => tags.filter((one) => one.name === tag).map(({ text }) => text);
    const [returns] = textsOf('returns');
    // constants and types are told where they are used
    if (returns === undefined) return [];
    return [
      {
        name,
        summary: unbroken(summary),
        inputs: textsOf('param').map((text) => {
          const [, input = '', told = ''] = /^(\S+)\s+-\s+([\s\S]*)$/u.exec(text) ?? [];
          return { name: input, text: unbroken(told) };
        }),
        returns: unbroken(returns),
        source: unbroken(textsOf('source').join('; ')),
        worked: textsOf('example').flatMap((text) => text.split('\n').filter((line) => line.trim() !== '')),
      },
    ];
  });
}

/** Lines of a paragraph as one, paragraphs apart. */
function unbroken(text: string): string {
  return text
    .split(/\n\s*\n/u)
    .map((part) => part.replace(/\s*\n\s*/gu, ' '))
    .join('\n\n');
}

/** One room as a page of the handbook. */
export function handbookPage({ room, answers, entries }: HandbookRoom): string {
  const parts = entries.map(({ name, summary, inputs, returns, source, worked }) =>
    [
      `## ${name}`,
      summary,
      ...(inputs.length === 0
        ? []
        : [inputs.map((input) => `- \`${input.name}\`: ${input.text}`).join('\n')]),
      `Gives: ${returns}`,
      `Source: ${source}`,
      ['```ts', ...worked, '```'].join('\n'),
    ].join('\n\n'),
  );
  return `${[`# ${room}`, `Answers: ${answers}.`, NOTE, ...parts].join('\n\n')}\n`;
}

const NOTE =
  'Made by `npm run docs` from the doc comments of the engine; every worked number runs as a test. Where a source says "memory" or "judgement", it was not confirmed in a text at hand.';

/** The first page of the handbook: rooms with what each answers. */
export function handbookIndex(rooms: readonly HandbookRoom[]): string {
  const rows = rooms.map(
    ({ room, answers, entries }) => `- [${room}](${room}.md): ${answers} (${entries.length})`,
  );
  return `${['# Handbook', NOTE, 'One page per room of the engine, lowest first; in brackets how many questions it answers.', rows.join('\n')].join('\n\n')}\n`;
}
