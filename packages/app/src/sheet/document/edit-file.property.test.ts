import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Edit } from './edit.ts';
import { editFile } from './edit-file.ts';
import { fieldList } from './job-fields.ts';
import { jobFile } from './job-file.ts';
import { writtenAt } from './text-file.ts';

const SEED = 20260711;
const FILES = ['penstock-seam', 'casting-wash', 'defect-pocket'].map((name) =>
  readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8').replace(
    /\n( *)(kit|depth|length|travel):/gu,
    '\n$1# note kept by the shop\n$1$2:',
  ),
);

const path = fc
  .tuple(fc.constantFrom(...fieldList().filter((field) => field.path !== 'furrow')), fc.nat({ max: 1 }))
  .map(([field, index]) => field.path.split('.').map((part) => (part === '*' ? index : part)));
const typed = fc.oneof(
  fc.constantFrom(
    '3/8 in',
    '0.375"',
    '9,5 mm',
    '28 ipm',
    '90 psi',
    'null',
    'true',
    '- a',
    '#',
    ': x',
    '&a',
    '*a',
    '{',
    '~',
    '"',
  ),
  fc
    .string({ minLength: 1, maxLength: 24 })
    .map((text) => text.trim())
    .filter((text) => text !== ''),
  fc.integer({ min: -1000, max: 1000 }),
);
const edit: fc.Arbitrary<Edit> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ do: fc.constant('set' as const), path, value: typed }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('remove' as const), path }) },
  {
    weight: 1,
    arbitrary: fc.constant<Edit>({
      do: 'append',
      path: ['kit', 'electrodes'],
      entry: { diameter: '1/2 in', count: 2 },
    }),
  },
);

/** Content without the field an edit is about. */
function others(text: string, without: readonly (string | number)[]): unknown {
  const content = parse(text) as Record<string | number, unknown>;
  let at: Record<string | number, unknown> | undefined = content;
  for (const part of without.slice(0, -1)) at = at?.[part] as Record<string | number, unknown> | undefined;
  if (at !== undefined && at !== null) delete at[without.at(-1) ?? ''];
  return dropEmpty(content);
}

function dropEmpty(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(dropEmpty);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, inner]) => [key, dropEmpty(inner)] as const);
  return Object.fromEntries(
    entries.filter(
      ([, inner]) => typeof inner !== 'object' || inner === null || Object.keys(inner).length > 0,
    ),
  );
}

function comments(text: string): number {
  return text.split('# note kept by the shop').length - 1;
}

describe('any row of edits', () => {
  it('leaves a file that can be read, with the value set, the rest unchanged and the comments in it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FILES),
        fc.array(edit, { minLength: 1, maxLength: 6 }),
        (text, edits) => {
          let file = jobFile(text);
          for (const one of edits) {
            const result = editFile(file, [one]);
            if (!result.ok) continue;
            const next = result.file;
            expect(next.document.errors).toEqual([]);
            expect(comments(next.text)).toBe(comments(file.text));
            if (one.do === 'set') expect(writtenAt(next, one.path)).toBe(String(one.value));
            if (one.do === 'remove') expect(writtenAt(next, one.path)).toBeUndefined();
            if (one.do !== 'append') expect(others(next.text, one.path)).toEqual(others(file.text, one.path));
            file = next;
          }
        },
      ),
      { seed: SEED, numRuns: 120 },
    );
  });

  it('is refused as a value, never thrown, for any text at all', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), edit, (text, one) => {
        const result = editFile(jobFile(text), [one]);
        if (result.ok) expect(result.file.document.errors).toEqual([]);
        else expect(result.why).not.toBe('');
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});
