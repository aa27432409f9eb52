import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ROOT } from './install.mjs';
import { MUTANTS } from './planted-mutants.mjs';

/** Whether the tests that ought to notice a planted error do notice it. */
function isKilled({ file, find, plant, tests }) {
  const { status, error } = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules', 'vitest', 'vitest.mjs'), 'run', '--bail=1', '--reporter=dot', ...tests],
    {
      cwd: ROOT,
      stdio: 'ignore',
      env: { ...process.env, FURROW_MUTANT: JSON.stringify({ file, find, plant }) },
    },
  );
  if (error !== undefined) throw error;
  return status !== 0;
}

const wanted = process.argv.slice(2);
const chosen = MUTANTS.filter(
  ({ what }) => wanted.length === 0 || wanted.some((word) => what.includes(word)),
);

// Tests that fail on the sources as they are would kill every mutant.
const all = [...new Set(chosen.flatMap(({ tests }) => tests))];
const sound = spawnSync(
  process.execPath,
  [join(ROOT, 'node_modules', 'vitest', 'vitest.mjs'), 'run', '--reporter=dot', ...all],
  { cwd: ROOT, stdio: 'ignore' },
);
if (sound.status !== 0) {
  console.error('The tests fail without any planted error; mend that first: npm test');
  process.exit(2);
}

let killed = 0;
for (const mutant of chosen) {
  const dead = isKilled(mutant);
  killed += dead ? 1 : 0;
  console.log(`${dead ? 'killed  ' : 'SURVIVED'}  ${mutant.what}  (${mutant.file})`);
}
console.log(`\n${killed} of ${chosen.length} planted errors were noticed.`);
// Nine in ten is what the project asks for.
process.exitCode = killed >= 0.9 * chosen.length ? 0 : 1;
