import { readFileSync } from 'node:fs';
import { readJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { Edit } from './edit.ts';
import { editFile } from './edit-file.ts';
import { jobFile } from './job-file.ts';
import { entriesAt, writtenAt } from './text-file.ts';

const DEMO = readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');

function edited(text: string, ...edits: Edit[]): string {
  const result = editFile(jobFile(text), edits);
  if (!result.ok) throw new Error(result.why);
  return result.file.text;
}

describe('a file without its version', () => {
  it.each(['', '# nothing yet\n', 'title: Seam\n'])('gets it with the first change: %j', (text) => {
    const edited = editFile(jobFile(text), [{ do: 'set', path: ['plate', 'thickness'], value: '20 mm' }]);
    expect(edited.ok && edited.file.text).toMatch(/^furrow: 1\n/u);
    expect(edited.ok && edited.file.text).toContain('thickness: 20 mm');
    expect(edited.ok && edited.file.text.match(/furrow: 1/gu)).toHaveLength(1);
  });

  it('is left to the text where a line before it would break the file', () => {
    const edited = editFile(jobFile('---\ntitle: Seam\n'), [{ do: 'set', path: ['title'], value: 'Seam 2' }]);
    expect(edited.ok && edited.file.text).toBe('---\ntitle: Seam 2\n');
  });
});

describe('editFile', () => {
  it('replaces a value in its place and leaves every other letter alone', () => {
    const text = edited(DEMO, { do: 'set', path: ['plate', 'thickness'], value: '1 1/4 in' });
    expect(text).toBe(DEMO.replace('thickness: 32 mm', 'thickness: 1 1/4 in'));
  });

  it('quotes a value that would be read otherwise', () => {
    const comma = edited(DEMO, { do: 'set', path: ['groove', 'depth', 'wanted'], value: '9,5 mm' });
    expect(comma).toBe(DEMO.replace('wanted: 12 mm', 'wanted: "9,5 mm"'));
    const bare = edited(DEMO, { do: 'set', path: ['plate', 'thickness'], value: '32' });
    expect(bare).toBe(DEMO.replace('thickness: 32 mm', 'thickness: "32"'));
  });

  it('puts a new field where the form has it and keeps comments', () => {
    const text = edited(
      'furrow: 1 # version\nseam:\n  # along the weld\n  length: 6 m # measured\nlocks: { layers: 2 }\n',
      { do: 'set', path: ['seam', 'path'], value: 'girth' },
      { do: 'set', path: ['locks', 'current'], value: '850 A' },
      { do: 'set', path: ['title'], value: 'Seam 7' },
    );
    expect(text).toBe(
      'furrow: 1 # version\ntitle: Seam 7\nseam:\n  path: girth\n  # along the weld\n  length: 6 m # measured\nlocks: { current: 850 A, layers: 2 }\n',
    );
  });

  it('makes the group that a new field needs, and takes it away with its last field', () => {
    const locked = edited(DEMO, { do: 'set', path: ['locks', 'current'], value: '850 A' });
    expect(locked).toBe(`${DEMO}\nlocks:\n  current: 850 A\n`);
    expect(edited(locked, { do: 'remove', path: ['locks', 'current'] })).toBe(DEMO);
  });

  it('keeps the comment above a field that is taken out', () => {
    const text = edited('seam:\n  # from the drawing\n  length: 6 m\n  position: flat\n', {
      do: 'remove',
      path: ['seam', 'length'],
    });
    expect(text).toBe('seam:\n  # from the drawing\n  position: flat\n');
  });

  it('replaces a key with a unit by the plain key', () => {
    const text = edited('plate: { thickness_mm: 32 }\n', {
      do: 'set',
      path: ['plate', 'thickness'],
      value: '1 in',
    });
    expect(text).toBe('furrow: 1\nplate: { thickness: 1 in }\n');
  });

  it('adds and takes out electrodes', () => {
    const path = ['kit', 'electrodes'];
    const more = edited(DEMO, { do: 'append', path, entry: { diameter: '3/4 in', count: 4 } });
    expect(more).toContain('    - { diameter: 3/4 in, count: 4 }\n  current:');
    expect(edited(more, { do: 'remove', path: [...path, 3] })).toBe(DEMO);
    expect(readJob(edited(DEMO, { do: 'remove', path: [...path, 0] })).ok).toBe(true);
  });

  it('keeps a JSON file JSON', () => {
    const text = edited(
      '{"furrow": 1, "plate": {"thickness_mm": 32}}',
      { do: 'set', path: ['plate', 'thickness'], value: '1 in' },
      { do: 'set', path: ['title'], value: 'Seam' },
      { do: 'append', path: ['kit', 'electrodes'], entry: { count: 3 } },
      { do: 'remove', path: ['furrow'] },
    );
    expect(JSON.parse(text)).toEqual({
      title: 'Seam',
      plate: { thickness: '1 in' },
      kit: { electrodes: [{ count: 3 }] },
    });
  });

  it('changes nothing in a text with mistakes and nothing behind an alias', () => {
    expect(editFile(jobFile('a: [1'), [{ do: 'set', path: ['title'], value: 'x' }]).ok).toBe(false);
    const shared = jobFile('seam: &s { length: 6 m }\nplate: *s\n');
    expect(editFile(shared, [{ do: 'set', path: ['plate', 'thickness'], value: '1 in' }])).toEqual({
      ok: false,
      why: 'plate.thickness is written in a way the form cannot change: change it in the text view.',
    });
  });
});

describe('writtenAt', () => {
  it('gives what was written, letter for letter', () => {
    const file = jobFile('kit:\n  electrodes:\n    - { diameter: 3/8 in, price_each: 2.10 }\n');
    expect(writtenAt(file, ['kit', 'electrodes', 0, 'diameter'])).toBe('3/8 in');
    expect(writtenAt(file, ['kit', 'electrodes', 0, 'price_each'])).toBe('2.10');
    expect(writtenAt(file, ['kit', 'electrodes', 1, 'diameter'])).toBeUndefined();
    expect(writtenAt(file, ['kit', 'current', 'least'])).toBeUndefined();
  });

  it('reads a key with a unit as an amount', () => {
    const file = jobFile('plate: { thickness_mm: 32 }\nkit: { travel: { least_in_per_min: 6 } }\n');
    expect(writtenAt(file, ['plate', 'thickness'])).toBe('32 mm');
    expect(writtenAt(file, ['kit', 'travel', 'least'])).toBe('6 in/min');
  });
});

describe('a text that no reader builds a tree from', () => {
  it.each([
    ['groups as names of groups', `${'{'.repeat(32)}${'}'.repeat(32)}`],
    ['lists in lists', '['.repeat(2000)],
    ['references to references', `title: a\n${'b: &b [*b, *b]\n'.repeat(60)}`],
    ['names announced by a question mark', `title: a\n${'? '.repeat(900)}b`],
  ])('of %s is a file with nothing in its fields that the form leaves alone', (_name, text) => {
    const file = jobFile(text);
    expect(file.broken).toBe(true);
    expect(writtenAt(file, ['title'])).toBeUndefined();
    expect(entriesAt(file, ['kit', 'electrodes'])).toBe(0);
    expect(editFile(file, [{ do: 'set', path: ['title'], value: 'b' }]).ok).toBe(false);
    expect(file.text).toBe(text);
  });
});
