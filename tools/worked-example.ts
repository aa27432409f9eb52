import ts from 'typescript';
import { readWorkedValue, workedDifference } from './worked-value.ts';

/** One worked number of a doc comment: the code that runs and the value that stands behind it. */
export interface WorkedExample {
  /** Statements before the expression, those of the examples above it included. */
  readonly before: string;
  readonly expression: string;
  /** The value, as written behind the arrow. */
  readonly written: string;
}

const ARROW = /^(.*?)\/\/\s*=>\s*(.*)$/;

/** Finds the worked numbers of an `@example` block; throws where one does not end in an expression. */
export function readWorkedExamples(block: string): readonly WorkedExample[] {
  const examples: WorkedExample[] = [];
  const lines = block.split('\n').filter((line) => !line.trimStart().startsWith('```'));
  let before = '';
  let code = '';
  for (const [index, line] of lines.entries()) {
    const arrow = ARROW.exec(line);
    if (!arrow) {
      // What follows an arrow in comments of its own is the rest of a value too long for its line.
      if (!(code === '' && line.trimStart().startsWith('//'))) code += `${line}\n`;
      continue;
    }
    code += arrow[1]!;
    const { statements, expression } = splitLast(code);
    const written = [arrow[2]!, ...continued(lines.slice(index + 1))].join(' ').trim();
    examples.push({ before: before + statements, expression, written });
    before += `${statements}${expression};\n`;
    code = '';
  }
  return examples;
}

function continued(lines: readonly string[]): string[] {
  const end = lines.findIndex((line) => !/^\s*\/\/(?!\s*=>)/.test(line));
  return lines.slice(0, end < 0 ? lines.length : end).map((line) => line.replace(/^\s*\/\/\s*/, ''));
}

function splitLast(code: string): { statements: string; expression: string } {
  const file = ts.createSourceFile('example.ts', code, ts.ScriptTarget.Latest, true);
  const last = file.statements.at(-1);
  if (!last || !ts.isExpressionStatement(last)) {
    throw new Error(`no expression stands before the arrow: ${code.trim()}`);
  }
  return { statements: code.slice(0, last.getStart()), expression: last.expression.getText() };
}

/** Runs an example with the given names in scope, to the end of what it promises; tells what differs, or undefined where it holds. */
export async function runWorkedExample(
  example: WorkedExample,
  scope: Readonly<Record<string, unknown>>,
): Promise<string | undefined> {
  try {
    const wanted = readWorkedValue(example.written);
    const body = ts.transpile(`${example.before}\nreturn (${example.expression});`, {
      target: ts.ScriptTarget.ES2022,
    });
    const run = new Function(...Object.keys(scope), `'use strict';\n${body}`);
    const difference = workedDifference(wanted, await run(...Object.values(scope)));
    return difference && `${example.expression}: ${difference}`;
  } catch (error) {
    return `${example.expression}: ${error instanceof Error ? error.message : String(error)}`;
  }
}
