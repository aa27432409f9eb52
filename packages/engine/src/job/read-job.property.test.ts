import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { ISSUE_CODES } from '../issue/index.ts';
import { jobFields } from './fields.ts';
import { readJob } from './read-job.ts';

const EXAMPLES = new URL('../../../../examples/', import.meta.url);
const TEXTS = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.yaml') && !name.endsWith('-kit.yaml'))
  .map((name) => readFileSync(new URL(name, EXAMPLES), 'utf8'));
const SEED = 20260127;

function everyNumberIsFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  return typeof value !== 'object' || value === null || Object.values(value).every(everyNumberIsFinite);
}

/** A value, or issues a person can use; anything else fails. Returns whether it was a value. */
function expectSound(text: string): boolean {
  const outcome = readJob(text);
  if (outcome.ok) {
    expect(everyNumberIsFinite(outcome.value.job)).toBe(true);
    expect(outcome.value.job.seam.length).toBeGreaterThan(0);
    expect(outcome.value.revision).toMatch(/^[0-9a-f]{64}$/);
    return true;
  }
  expect(outcome.issues.length).toBeGreaterThan(0);
  const lines = text.split('\n').length;
  for (const issue of outcome.issues) {
    expect(Object.keys(ISSUE_CODES)).toContain(issue.code);
    expect(issue.message.trim()).not.toBe('');
    expect(issue.message).not.toMatch(/undefined|\[object|call stack/);
    if (issue.position !== undefined) {
      expect(issue.position.line).toBeGreaterThanOrEqual(1);
      expect(issue.position.line).toBeLessThanOrEqual(lines);
      expect(issue.position.column).toBeGreaterThanOrEqual(1);
    }
  }
  return false;
}

const text = fc.constantFrom(...TEXTS);
const piece = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 6 }),
  fc.constantFrom(
    '\n',
    '  ',
    '\t',
    ': ',
    '- ',
    '{',
    '}',
    '[',
    ']',
    '"',
    "'",
    '#',
    '&a ',
    '*a',
    '!!',
    '? ',
    '|',
    '>',
    ',',
    '<<: ',
    '%',
    '---\n',
    '0',
    '-',
    '1e999',
    '.nan',
    'null',
    'mm',
    ' in',
    '1/0 in',
    '__proto__: ',
    '\0',
    '\ud800',
    '\u2028',
  ),
);

/** What is done to a text: at a place, so much is taken out, and so much put in. */
const edit = fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), out: fc.nat(12), put: piece });

describe('readJob', () => {
  it('stands any few edits of a good file', () => {
    fc.assert(
      fc.property(text, fc.array(edit, { minLength: 1, maxLength: 4 }), (good, edits) => {
        let bad = good;
        for (const { at, out, put } of edits) {
          const place = Math.floor(at * bad.length);
          bad = bad.slice(0, place) + put + bad.slice(place + out);
        }
        expectSound(bad);
      }),
      { seed: SEED, numRuns: 400 },
    );
  });

  it('stands lines taken out, doubled and swapped', () => {
    const places = fc.array(fc.tuple(fc.nat(), fc.nat(), fc.constantFrom('out', 'double', 'swap')), {
      minLength: 1,
      maxLength: 3,
    });
    fc.assert(
      fc.property(text, places, (good, steps) => {
        const lines = good.split('\n');
        for (const [a, b, what] of steps) {
          const [i, j] = [a % lines.length, b % lines.length];
          if (what === 'out') lines.splice(i, 1);
          else if (what === 'double') lines.splice(j, 0, lines[i]!);
          else [lines[i], lines[j]] = [lines[j]!, lines[i]!];
          if (lines.length === 0) lines.push('');
        }
        expectSound(lines.join('\n'));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('stands any text and any JSON', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 200 }),
          fc.array(piece, { maxLength: 60 }).map((pieces) => pieces.join('')),
          fc.json({ maxDepth: 6 }),
          fc.jsonValue().map((value) => `furrow: 1\nkit: ${JSON.stringify(value)}`),
        ),
        (any) => {
          expectSound(any);
        },
      ),
      { seed: SEED, numRuns: 800 },
    );
  });

  it('stands any value in every field', () => {
    const paths = jobFields().map((field) => field.path.replace('*', '0').split('.'));
    const groups = [
      ...new Set(paths.flatMap((path) => path.map((_, end) => path.slice(0, end + 1).join('.')))),
    ];
    const value = fc.oneof(
      fc.jsonValue({ maxDepth: 3 }),
      fc.double(),
      fc.constantFrom(
        '0 mm',
        '-5 mm',
        '1e99 mm',
        '0 %',
        '100 %',
        '5',
        '',
        '1/0 in',
        '99999 A',
        '1 in',
        '90 deg',
      ),
      fc.constant(Number.NaN),
    );
    const all = TEXTS.map((one) => parse(one) as Record<string, unknown>);
    // the same few for each field in turn: no field is left to the draw
    groups.forEach((path, nth) => {
      fc.assert(
        fc.property(fc.constantFrom(...all), value, (good, put) => {
          const job = structuredClone(good);
          const names = path.split('.');
          let group = job as Record<string, unknown>;
          for (const name of names.slice(0, -1)) {
            if (typeof group[name] !== 'object') group[name] = {};
            group = group[name] as Record<string, unknown>;
          }
          group[names.at(-1)!] = put;
          expectSound(stringify(job, { aliasDuplicateObjects: false }));
        }),
        { seed: SEED + nth, numRuns: 4 },
      );
    });
  });

  it('stands any choice of fields left out', () => {
    fc.assert(
      fc.property(text, fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })), (good, chance) => {
        const keep = (value: unknown): unknown => {
          if (Array.isArray(value)) return value.map(keep);
          if (typeof value !== 'object' || value === null) return value;
          const kept = Object.entries(value).filter(() => chance.next().value! > 0.1);
          return Object.fromEntries(kept.map(([key, inner]) => [key, keep(inner)]));
        };
        expectSound(JSON.stringify(keep(parse(good))));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('reads the same from YAML and from JSON', () => {
    for (const one of TEXTS) {
      const yaml = readJob(one);
      const json = readJob(JSON.stringify(parse(one)));
      expect(yaml.ok && json.ok && yaml.value.revision === json.value.revision).toBe(true);
    }
  });
});
