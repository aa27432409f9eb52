import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const FOLDER = fileURLToPath(new URL('.', import.meta.url));
const FILES = readdirSync(FOLDER, { recursive: true, encoding: 'utf8' }).filter(
  (name) => name.endsWith('.ts') && !name.endsWith('.test.ts'),
);

/** Ways in which a number that a result states could be turned back into SI. */
const BACK_TO_SI =
  /fromUnit\(|\b\w+_(?:mm|mm_per_min|kJ|kPa|min|percent|degC|L_per_min)\b[^;,\n]*[*/] ?(?:MM|1e-?\d|1000|60)/u;

it('is composed of SI: no line of the answer turns a stated number back', () => {
  expect(FILES.length).toBeGreaterThan(8);
  const turned = FILES.flatMap((name) =>
    readFileSync(join(FOLDER, name), 'utf8')
      .split('\n')
      .flatMap((line, index) => (BACK_TO_SI.test(line) ? [`${name}:${index + 1}`] : [])),
  );
  expect(turned).toEqual([]);
});

it('knows such a line when it sees one', () => {
  expect('travel: plan.travel_mm_per_min * MM_PER_MIN').toMatch(BACK_TO_SI);
  expect('const depth = plan.depth_mm / 1000;').toMatch(BACK_TO_SI);
  expect('depth_mm: inUnit(depth, unit)').not.toMatch(BACK_TO_SI);
});
