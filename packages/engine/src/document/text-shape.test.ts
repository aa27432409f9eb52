import { describe, expect, it } from 'vitest';
import { documentTree } from './document-tree.ts';
import { DOCUMENT_TEXT_MOST, textFault } from './text-shape.ts';

const NAME = /name of a field/u;

describe('textFault', () => {
  it.each([
    ['{{}}', 1],
    ['{ [a]: 1 }', 2],
    ['{ a: { {b: 1}: 2 } }', 7],
    ['{ a: b {c: d} }', 7],
    ['{ a: b [c] }', 7],
    ['[ [a]: 1 ]', 5],
    ['[a]: 1', 3],
    ['x: { a: 1 }\n{ a: 1 }: 2', 20],
    ['- [a]: 1', 5],
    ['a: [b]: c', 6],
    ['? a\n: b', 0],
    ['[? a: b]', 1],
    ['a: &a 1\n*a : 2', 11],
    ['a: &a 1\nb: { *a : 2 }', 13],
  ])('finds the name that is no text in %j', (text, offset) => {
    expect(textFault(text)).toMatchObject({ offset, message: expect.stringMatching(NAME) });
  });

  it.each([
    'a: 1\n"b": [1, [2, {c: 3}], {d: [4]}]\n',
    '{"a": {"b": [1, {"c": 2}]}, "d": []}',
    "- a: 1\n  b: {c: d, e: [f]}\n- 'g': h\n",
    'a: &a { b: 1 }\nc: *a\nd: [*a, *a]\n',
    'a: |\n  {{}} ? [x]: y\nb: >-\n  - - - -\n',
    'a: b {{}} [c]: d? no\n',
    'a: [b: c, {d: e}]\nf: ? g\n'.replace('? g', '"? g"'),
    '---\na: 1\n...\n',
    '# {{}}\na: 1 # ? [x]: y\n',
  ])('finds nothing in %j', (text) => {
    expect(textFault(text)).toBeUndefined();
  });

  it('counts levels of brackets, of indentation, and of both together', () => {
    const indented = (levels: number) =>
      Array.from({ length: levels }, (_, at) => `${' '.repeat(at)}a:\n`).join('');
    expect(textFault('['.repeat(20) + ']'.repeat(20))).toBeUndefined();
    expect(textFault('['.repeat(21) + ']'.repeat(21))).toMatchObject({ offset: 20 });
    expect(textFault(indented(20))).toBeUndefined();
    expect(textFault(indented(21))?.accepted).toBe('at most 20 levels');
    expect(textFault('- '.repeat(21))?.accepted).toBe('at most 20 levels');
    expect(textFault(`${indented(10)}${' '.repeat(10)}- ${'['.repeat(9)}`)).toBeUndefined();
    expect(textFault(`${indented(10)}${' '.repeat(10)}- ${'['.repeat(10)}`)).toBeDefined();
    expect(textFault(`${indented(15)}${indented(15)}${'[]\n'.repeat(50)}`)).toBeUndefined();
  });

  it('counts references, places to refer to, lines and characters', () => {
    expect(textFault(`a: &a 1\nb: [${'*a, '.repeat(50)}]`)).toBeUndefined();
    expect(textFault(`a: &a 1\nb: [${'*a, '.repeat(51)}]`)?.accepted).toBe('at most 50 references');
    expect(textFault('- &a 1\n'.repeat(51))?.accepted).toBe('at most 50 references');
    expect(textFault('a: 1\n'.repeat(9_999))).toBeUndefined();
    expect(textFault('a: 1\n'.repeat(10_001))?.accepted).toBe('at most 10000 lines');
    expect(textFault('a'.repeat(DOCUMENT_TEXT_MOST))).toBeUndefined();
    expect(textFault('a'.repeat(DOCUMENT_TEXT_MOST + 1))?.accepted).toBe('at most 200000 characters');
  });

  it('quotes what stands there, on one line and cut short', () => {
    expect(textFault(`a: 1\n? ${'x'.repeat(200)}\n`)?.read).toMatch(/^\? x{50,57}…$/u);
  });
});

it('mistakes are told without what stands around them, which takes long to find for each', () => {
  const tree = documentTree('a: b: c\n}\n'.repeat(100));
  expect(tree.ok && tree.value.mistakes.length).toBeGreaterThan(100);
  for (const { message } of tree.ok ? tree.value.mistakes : []) expect(message).not.toContain('\n');
});
