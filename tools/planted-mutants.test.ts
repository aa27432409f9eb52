import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from './install.mjs';
import { MUTANTS } from './planted-mutants.mjs';

it.each(MUTANTS.map((mutant) => [mutant.what, mutant] as const))(
  '%s: the error can be planted once, and its tests are there',
  (_what, { file, find, plant, tests }) => {
    expect(readFileSync(join(ROOT, file), 'utf8').split(find), `${file} holds “${find}”`).toHaveLength(2);
    expect(plant).not.toBe(find);
    for (const path of tests) expect(existsSync(join(ROOT, path)), path).toBe(true);
  },
);
