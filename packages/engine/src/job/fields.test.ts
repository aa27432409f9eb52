import { expect, it } from 'vitest';
import { parseAmount } from '../quantity/index.ts';
import { jobFields } from './fields.ts';

const fields = jobFields();

it('names every field once, in the order of the file, with title and help', () => {
  const paths = fields.map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
  expect(paths.slice(0, 4)).toEqual(['furrow', 'title', 'note', 'seam.path']);
  for (const { path, title, help } of fields) {
    expect(title, path).not.toBe('');
    expect(help, path).toMatch(/\.$/);
  }
});

it('offers defaults that are themselves accepted', () => {
  for (const { path, entry, kind, fallback, options, optional } of fields) {
    if (fallback === undefined) continue;
    expect(optional, path).toBe(true);
    if (entry === 'amount') expect(parseAmount(String(fallback), kind!), path).toMatchObject({ ok: true });
    if (entry === 'choice') expect(options, path).toContain(fallback);
    if (entry === 'number') expect(typeof fallback, path).toBe('number');
  }
});

it('tells how each field is entered', () => {
  const entry = (path: string) => fields.find((field) => field.path === path);
  expect(entry('kit.electrodes.*.diameter')).toMatchObject({
    entry: 'amount',
    kind: 'length',
    optional: false,
  });
  expect(entry('plate.material')).toMatchObject({
    entry: 'choice',
    optional: true,
    fallback: 'carbon_steel',
  });
  expect(entry('kit.electrodes.*.count')).toMatchObject({ entry: 'number', optional: true, fallback: 1000 });
  expect(entry('note')).toMatchObject({ entry: 'text', optional: true });
  expect(entry('seam.length')).toMatchObject({ entry: 'amount', optional: true });
  expect(entry('plate.composition.C')).toMatchObject({ entry: 'number', optional: true });
});
