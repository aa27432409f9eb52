import { runScript } from './run-program.mjs';

/**
 * Runs the checks that need no test: the types, which keep one core busy for as long as all the others, and the others one
 * after the other beside them.
 *
 * @returns {Promise<string[]>} names of those that failed
 */
export async function runChecks() {
  const failed = [];
  const run = async (names) => {
    for (const name of names) if (!(await runScript(name))) failed.push(name);
  };
  await Promise.all([run(['types']), run(['lint', 'imports', 'unused'])]);
  return failed;
}
