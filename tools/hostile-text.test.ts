import { documentTree, readJob, readKit, readReadings, topField } from '@furrow/engine';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WorkCount } from './work-count.ts';

const READERS = { readJob, readKit, readReadings } as const;

/** Texts that make readers of this format hang, overflow or run out of memory, each of any size. */
const SHAPES: Readonly<Record<string, (size: number) => string>> = {
  'groups as names of groups': (n) => '{'.repeat(n) + '}'.repeat(n),
  'lists as names of groups': (n) => `${'{ ['.repeat(n)}a${']: 1 }'.repeat(n)}`,
  'groups before a forgotten comma': (n) => `${'{ a: b '.repeat(n)}${'}'.repeat(n)}`,
  'names announced by a question mark': (n) => `${'? '.repeat(n)}a\n`,
  'names announced in brackets': (n) => `${'[? '.repeat(n)}a${']'.repeat(n)}`,
  'lists in lists': (n) => '['.repeat(n) + ']'.repeat(n),
  'brackets never closed': (n) => '[{a: '.repeat(n),
  'brackets never opened': (n) => ']}'.repeat(n),
  'dashes on one line': (n) => `${'- '.repeat(n)}a`,
  'colons on one line': (n) => ': '.repeat(n),
  'names on one line': (n) => 'a: '.repeat(n),
  'ever deeper indentation': (n) =>
    Array.from({ length: Math.ceil(Math.sqrt(n)) }, (_, level) => `${' '.repeat(level)}a:\n`).join(''),
  'tabs as indentation': (n) =>
    Array.from({ length: Math.ceil(Math.sqrt(n)) }, (_, level) => `${'\t'.repeat(level)}a:\n`).join(''),
  'references to references': (n) =>
    `a0: &a0 [x, x]\n${Array.from({ length: Math.ceil(n / 16) }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}, *a${i}]\n`).join('')}`,
  'one reference many times': (n) => `a: &a { b: 1 }\nc: [${'*a, '.repeat(n)}]`,
  'places named and never used': (n) => Array.from({ length: n }, (_, i) => `a${i}: &a${i} 1`).join('\n'),
  'a reference as a name': (n) => `a: &a ${'['.repeat(10)}${']'.repeat(10)}\n${'*a : 1\n'.repeat(n)}`,
  'quotes never closed': (n) => 'a: "b\n'.repeat(n),
  'escapes that are none': (n) => `a: "${'\\q'.repeat(n)}"`,
  'blank lines and then remarks': (n) => `a:\n${'\n'.repeat(n)}${' #\n'.repeat(n)}b: 1`,
  'many documents': (n) => '---\n'.repeat(n),
  'many directives': (n) => '%a\n'.repeat(n),
  'labels and labels': (n) => `a: ${'!b '.repeat(n)}c`,
  'one long name': (n) => `${'a'.repeat(n)}: 1`,
  'one long value': (n) => `title: ${'a '.repeat(n)}`,
  'many mistakes': (n) => 'a: b: c\n}\n'.repeat(n),
  'one name many times': (n) => 'a: 1\n'.repeat(n),
  'many names': (n) => Array.from({ length: n }, (_, i) => `a${i}: 1\n`).join(''),
  'many entries': (n) => `kit:\n  electrodes: [${'{ diameter: 1 mm }, '.repeat(n)}]`,
  'a block of text': (n) => `title: |\n${'  a\n'.repeat(n)}`,
  'spaces at the ends of lines': (n) => `title: a${' '.repeat(n)}\n  b`,
};

const PIECE = fc.constantFrom(
  ...['{', '}', '[', ']', ',', ':', ': ', '? ', '- ', '\n', ' ', '\t', '&a ', '*a', '*a ', '!b ', '#', ' #'],
  ...['"', "'", '|\n', '>\n', '---\n', '...\n', '%a\n', 'a', 'a: ', '\\', '<<: '],
);

describe('work', () => {
  const work = new WorkCount();
  beforeAll(() => work.start());
  afterAll(() => work.stop());

  /** Blocks run for a text of one size, and for one of twice the size. */
  function growth(shape: (size: number) => string): [number, number] {
    readJob(shape(10));
    return [work.of(() => readJob(shape(500))), work.of(() => readJob(shape(1000)))];
  }

  it('is counted: twice the rounds are twice the work, and a square shows', () => {
    const rounds = (count: number) => () => {
      for (let round = 0; round < count; round += 1) readJob('');
    };
    // what is made ready on the first call is no part of the law
    work.of(rounds(1));
    const [once, twice] = [work.of(rounds(100)), work.of(rounds(200))];
    // blocks that the engine compiles meanwhile are counted once or twice
    expect(twice / once).toBeGreaterThan(1.7);
    expect(twice / once).toBeLessThan(2.3);
    const square = (size: number) => () => {
      for (let round = 0; round < size; round += 1) rounds(size)();
    };
    expect(work.of(square(20)) / work.of(square(10))).toBeGreaterThan(3.5);
  });

  it.each(Object.entries(SHAPES))('grows no faster than the text: %s', (_name, shape) => {
    const [once, twice] = growth(shape);
    // a fixed part beside what grows; what grows with the square would come out near 4
    expect(twice).toBeLessThan(2.3 * once + 2000);
    expect(twice).toBeLessThan(300 * shape(1000).length + 100_000);
  });

  it('grows no faster than the text, for any pieces said again and again', () => {
    fc.assert(
      fc.property(fc.array(PIECE, { minLength: 1, maxLength: 12 }), (pieces) => {
        const [once, twice] = growth((size) => pieces.join('').repeat(size / 5));
        expect(twice).toBeLessThan(2.6 * once + 5000);
      }),
      { seed: 20261127, numRuns: 40 },
    );
  });
});

describe.each(Object.entries(SHAPES))('%s', (_name, shape) => {
  it('is refused in words by every reader, at any size', () => {
    for (const size of [1, 2, 16, 32, 300, 20_000]) {
      const text = shape(size);
      for (const [name, read] of Object.entries(size === 32 ? READERS : { readJob })) {
        const outcome = read(text);
        expect(outcome.ok, name).toBe(false);
        expect(topField(text, 'furrow')).toBeUndefined();
        if (outcome.ok) continue;
        expect(outcome.issues.length).toBeLessThanOrEqual(50);
        for (const { message } of outcome.issues) {
          expect(message).not.toMatch(/call stack|undefined|\[object/u);
          expect(message.length).toBeLessThan(2000);
        }
      }
    }
  });
});

describe('a text of any such pieces', () => {
  it('gives a tree of bounded depth with plain names, or a fault with its place', () => {
    fc.assert(
      fc.property(fc.array(PIECE, { maxLength: 80 }), (pieces) => {
        const text = pieces.join('');
        const outcome = documentTree(text);
        if (outcome.ok) expect(heightOf(outcome.value.document.contents)).toBeLessThanOrEqual(45);
        else expect(outcome.fault.offset).toBeLessThanOrEqual(text.length);
      }),
      { seed: 20261127, numRuns: 3000 },
    );
  });
});

/** Levels of a tree; a name that is no single value counts as endless. */
function heightOf(node: unknown): number {
  if (typeof node !== 'object' || node === null) return 0;
  if ('key' in node && 'value' in node) {
    const { key, value } = node;
    const plain = key === null || (typeof key === 'object' && key !== null && !('items' in key));
    return plain ? heightOf(value) : Number.POSITIVE_INFINITY;
  }
  if (!('items' in node)) return 0;
  return 1 + Math.max(0, ...(node.items as unknown[]).slice(0, 100).map(heightOf));
}
