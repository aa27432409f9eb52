import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { jobDifference } from './difference.ts';
import { jobFields } from './fields.ts';
import { readJob } from './read-job.ts';

const EXAMPLES = new URL('../../../../examples/', import.meta.url);
const TEXTS = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.yaml') && !name.endsWith('-kit.yaml'))
  .map((name) => readFileSync(new URL(name, EXAMPLES), 'utf8'));
const NUMBERS = jobFields().filter(({ entry, path }) => entry === 'amount' && !path.includes('*'));

/** Amounts that many fields of a kind accept. */
const VALUES: Readonly<Record<string, readonly string[]>> = {
  length: ['12 mm', '5 mm', '3 m'],
  speed: ['300 mm/min', '1 m/min', '40 in/min'],
  angle: ['35 deg', '45 deg', '50 deg'],
  share: ['95 %', '90 %', '60 %'],
  voltage: ['40 V', '41 V', '43 V'],
  temperature: ['30 °C', '200 °C', '60 °F'],
  time: ['20 s', '90 s', '5 min'],
  current: ['400 A', '850 A', '200 A'],
};

it('there is a difference in words exactly where the revisions differ', () => {
  let differing = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...TEXTS),
      fc.constantFrom(...NUMBERS),
      fc.nat({ max: 2 }),
      fc.constantFrom('inch' as const, 'metric' as const),
      (text, field, turn, system) => {
        const file = parse(text) as Record<string, unknown>;
        let part = file;
        const names = field.path.split('.');
        for (const name of names.slice(0, -1)) {
          part[name] ??= {};
          part = part[name] as Record<string, unknown>;
        }
        part[names.at(-1)!] = VALUES[field.kind ?? '']?.[turn] ?? 'none';
        const [before, after] = [readJob(text), readJob(stringify(file))];
        if (!before.ok || !after.ok) return;
        const found = jobDifference(before.value, after.value, system);
        expect(found.length > 0).toBe(before.value.revision !== after.value.revision);
        if (found.length > 0) differing += 1;
        for (const { words, before: was, after: is } of found) {
          expect(was).not.toBe(is);
          expect(words).not.toMatch(/undefined|\[object|NaN/);
        }
      },
    ),
    { seed: 20261125, numRuns: 150 },
  );
  expect(differing).toBeGreaterThan(20);
});
