import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ts from 'typescript';
import { afterAll, describe, expect, test } from 'vitest';
import { ROOT } from './install.mjs';
import { unrenderedSentences } from './unrendered-sentences.ts';

function optionsOf(file: string): ts.ParsedCommandLine {
  const read = ts.readConfigFile(join(ROOT, file), ts.sys.readFile);
  return ts.parseJsonConfigFileContent(read.config, ts.sys, ROOT);
}

describe('a sentence whose amounts are not written yet', () => {
  const { options, fileNames } = optionsOf('tsconfig.json');
  const folder = mkdtempSync(join(tmpdir(), 'furrow-sentences-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  test('never stands in a page, a paper or a text of the terminal', () => {
    const own = (name: string): boolean => /packages\/(?:app|papers|cli)\/src\//u.test(name);
    const roots = fileNames.filter((name) => own(name) && !/\.test\.tsx?$/u.test(name));
    expect(roots.length).toBeGreaterThan(300);
    expect(unrenderedSentences(ts.createProgram(roots, options), own)).toEqual([]);
  }, 120_000);

  test('is seen in JSX, in a template and beside a plus, and let alone where it is written', () => {
    const file = join(folder, 'case.tsx');
    writeFileSync(
      file,
      `
type Sentence = string | { readonly say: readonly string[] };
declare function text(sentence: Sentence): string;
declare function say(words: TemplateStringsArray, ...parts: readonly Sentence[]): Sentence;
declare namespace JSX { interface IntrinsicElements { p: object } }
declare const sentence: Sentence;
export const shown = [<p title={text(sentence)}>{sentence}</p>, <p>{text(sentence)}</p>];
export const joined = \`so: \${sentence}\`;
export const added = 'so: ' + sentence;
export const right = [say\`so: \${sentence}\`, \`so: \${text(sentence)}\`];
`,
    );
    const program = ts.createProgram([file], { jsx: ts.JsxEmit.Preserve, noLib: true, strict: true });
    const found = unrenderedSentences(program, (name) => name === file);
    expect(found.map(({ at }) => at.split(':').at(-1))).toEqual(['7', '8', '9']);
  });
});
