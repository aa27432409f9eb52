import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runChecks } from './checks.mjs';
import { findBrowser } from './find-browser.mjs';
import { ensureInstalled, ROOT, requireNode } from './install.mjs';
import { runHeld, runScript, runSeen } from './run-program.mjs';
import { addCounts, tally } from './tally.mjs';

function heading(text) {
  console.log(`\n== ${text}`);
}

/** Installs a package of the system where that is possible without asking anybody. */
function installPackage(name) {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  heading(`installing ${name}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...args) =>
    spawnSync('apt-get', ['-qq', ...args], { stdio: ['ignore', 'ignore', 'inherit'], env });
  apt('update');
  apt('install', '-y', '--no-install-recommends', name);
}

/** A Chromium, installed first where it may be. */
function provideBrowser() {
  if (findBrowser() === undefined && !process.env.FURROW_CHROMIUM) installPackage('chromium');
  return findBrowser();
}

/** Another program's eyes on the PDFs; without it those tests count as skipped. */
function providePdfTools() {
  if (spawnSync('pdfinfo', ['-v'], { stdio: 'ignore' }).error !== undefined) installPackage('poppler-utils');
}

/** A PostgreSQL server to test the store with, in the usual place of a Debian-like system. */
function providePostgres() {
  if (!existsSync('/usr/lib/postgresql')) installPackage('postgresql');
  return existsSync('/usr/lib/postgresql');
}

function explainMissingPostgres(isFailure) {
  heading('PostgreSQL');
  console.log('No PostgreSQL server was found. Install the package postgresql of the system.');
  console.log(
    isFailure
      ? 'In CI that is a failure.'
      : 'The tests on PostgreSQL are left out and counted as skipped; those on SQLite run.',
  );
}

function explainMissingBrowser(isFailure) {
  heading('browser');
  console.log(
    process.env.FURROW_CHROMIUM
      ? `FURROW_CHROMIUM is set to ${process.env.FURROW_CHROMIUM}, and there is no program.`
      : 'No Chromium was found. Install Chromium with the system’s package manager or set FURROW_CHROMIUM to the path of one.',
  );
  console.log(
    isFailure
      ? 'In CI that is a failure.'
      : 'The browser tests are left out and counted as skipped; everything else runs.',
  );
}

/** Runs tests beside what else runs, and counts them; what vitest is given chooses which. */
async function runTests(run, title, filters) {
  const folder = mkdtempSync(join(tmpdir(), 'furrow-test-'));
  const file = join(folder, 'report.json');
  try {
    const program = join(ROOT, 'node_modules', 'vitest', 'vitest.mjs');
    const status = await run(title, process.execPath, [
      program,
      'run',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
      ...filters,
    ]);
    return tally(existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined, status);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const BROWSER_TESTS = 'e2e';

/** The build, and then the tests that drive what was built: an older build would tell nothing about these sources. */
async function buildAndDrive() {
  if (await runScript('build')) return runTests(runHeld, 'browser tests', ['--project', BROWSER_TESTS]);
  failures.push('build');
  return undefined;
}

/** The checks, and then the tests that read the sources alone. */
async function checkAndTest() {
  if (!onlyTests) failures.push(...(await runChecks()));
  return runTests(runSeen, 'tests', ['--project', `!${BROWSER_TESTS}`]);
}

/** What was asked for by name, after the checks and the build. */
async function testChosen() {
  if (!onlyTests) failures.push(...(await runChecks()));
  const isBuilt = await runScript('build');
  if (!isBuilt) failures.push('build');
  return runTests(runSeen, 'tests', isBuilt ? filters : [...filters, '--project', `!${BROWSER_TESTS}`]);
}

requireNode();
ensureInstalled();

const args = process.argv.slice(2);
const failures = [];
providePdfTools();
if (provideBrowser() === undefined) {
  const isFailure = process.env.CI === 'true';
  explainMissingBrowser(isFailure);
  if (isFailure) failures.push('browser');
}
if (!providePostgres()) {
  const isFailure = process.env.CI === 'true';
  explainMissingPostgres(isFailure);
  if (isFailure) failures.push('PostgreSQL');
}
const onlyTests = args.includes('--only-tests');
const filters = args.filter((arg) => arg !== '--only-tests');
// the tests in a browser wait for it half of their time, in which the others find a core
const counts = await Promise.all(filters.length > 0 ? [testChosen()] : [buildAndDrive(), checkAndTest()]);
const counted = addCounts(counts.filter((count) => count !== undefined));
const failed = counted.failed + failures.length;

if (failures.length > 0) console.log(`\nFailed before any test: ${failures.join(', ')}`);
console.log(`\n${counted.passed} passed, ${failed} failed, ${counted.skipped} skipped`);
process.exitCode = failed === 0 ? 0 : 1;
