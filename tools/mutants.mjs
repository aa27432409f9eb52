import { join } from 'node:path';
import { createVitest } from 'vitest/node';
import { ROOT } from './install.mjs';
import { MUTANTS } from './planted-mutants.mjs';

// what was read for one mutant serves the next, but for the source it stands in
const vitest = await createVitest('test', {
  watch: false,
  bail: 1,
  reporters: [{}],
  project: ['unit', 'property', 'published'],
  // what runs long on a busy machine has noticed nothing
  testTimeout: 300_000,
  root: ROOT,
});

/** What does not pass of the tests under these paths, up to the first that fails; names of tests, files and errors. */
async function failuresOf(paths) {
  const specifications = await vitest.globTestSpecifications(paths);
  if (specifications.length === 0) throw new Error(`no test stands under ${paths.join(', ')}`);
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specifications);
  const failed = testModules.filter((module) => !module.ok());
  return [
    ...unhandledErrors.map(String),
    ...failed.flatMap((module) => {
      const names = [...module.children.allTests('failed')].map((test) => test.fullName);
      return names.length > 0
        ? names
        : [module.relativeModuleId, ...module.errors().map(({ message }) => message)];
    }),
  ];
}

/** Has the next run read a source anew. */
function forget({ file }) {
  vitest.invalidateFile(join(ROOT, file));
}

/** Whether the tests that ought to notice a planted error do notice it. */
async function isKilled(mutant) {
  process.env.FURROW_MUTANT = JSON.stringify(mutant);
  forget(mutant);
  try {
    return (await failuresOf(mutant.tests)).length > 0;
  } finally {
    delete process.env.FURROW_MUTANT;
    forget(mutant);
  }
}

/** The room that a mutant stands in, such as `papers/words`. */
function roomOf({ file }) {
  const [, name, , room] = file.split('/');
  return `${name}/${room}`;
}

const wanted = process.argv.slice(2);
const chosen = MUTANTS.filter(
  (mutant) =>
    wanted.length === 0 || wanted.some((word) => mutant.what.includes(word) || roomOf(mutant) === word),
);

try {
  // Tests that fail on the sources as they are would kill every mutant.
  const failures = await failuresOf([...new Set(chosen.flatMap(({ tests }) => tests))]);
  if (failures.length > 0) {
    console.error('The tests fail without any planted error; mend that first:');
    for (const failure of failures) console.error(`  ${failure}`);
    process.exit(2);
  }
  const rooms = new Map();
  for (const mutant of chosen) {
    const dead = await isKilled(mutant);
    const room = rooms.get(roomOf(mutant)) ?? { killed: 0, planted: 0 };
    rooms.set(roomOf(mutant), { killed: room.killed + (dead ? 1 : 0), planted: room.planted + 1 });
    console.log(`${dead ? 'killed  ' : 'SURVIVED'}  ${mutant.what}  (${mutant.file})`);
  }
  console.log('\nPlanted errors that were noticed');
  for (const [room, { killed, planted: count }] of [...rooms].sort())
    console.log(`  ${room}: ${killed} of ${count}`);
  // Nine in ten is what the project asks for, of each room
  process.exitCode = [...rooms.values()].every(({ killed, planted: count }) => killed >= 0.9 * count) ? 0 : 1;
} finally {
  await vitest.close();
}
