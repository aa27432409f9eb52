import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';

// Runs before anything is installed, so it may import nothing but Node itself.

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

const LEAST_NODE = [20, 19];

/** Whether a Node version such as 20.19.1 is recent enough. */
export function isNodeRecent(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major > LEAST_NODE[0] || (major === LEAST_NODE[0] && minor >= LEAST_NODE[1]);
}

/** Ends the program with a plain sentence where Node is too old to run it. */
export function requireNode() {
  if (isNodeRecent(process.versions.node)) return;
  console.error(
    `Furrow needs Node ${LEAST_NODE.join('.')} or newer; this is Node ${process.versions.node}. Install a newer Node and run the command again.`,
  );
  process.exit(1);
}

function readLock(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).packages ?? {};
  } catch {
    return undefined;
  }
}

/**
 * Whether what is installed is what the lock asks for. Contents are compared and not dates: a checkout touches
 * files without changing them, and a laptop in a bay has no network to install again. Optional packages are
 * other platforms' binaries.
 */
export function isInstalled(root) {
  const wanted = readLock(join(root, 'package-lock.json'));
  const present = readLock(join(root, 'node_modules', '.package-lock.json'));
  if (!wanted || !present) return false;
  return Object.entries(wanted).every(
    ([path, entry]) =>
      !path.includes('node_modules/') ||
      entry.optional ||
      entry.devOptional ||
      (path in present && present[path].version === entry.version),
  );
}

/** Runs npm; through the very npm that started this program where there is one. */
export function npm(args, options = {}) {
  const program = process.env.npm_execpath;
  const settings = { cwd: ROOT, stdio: 'inherit', ...options };
  return program && basename(program) === 'npm-cli.js'
    ? spawnSync(process.execPath, [program, ...args], settings)
    : spawnSync('npm', args, { ...settings, shell: process.platform === 'win32' });
}

/** Installs the packages of the lock unless they are there. No package's install script is run. */
export function ensureInstalled() {
  if (isInstalled(ROOT)) return;
  console.log('Installing the packages Furrow is built from (once, needs the network) ...');
  const { status } = npm(['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']);
  if (status === 0) return;
  console.error(
    'The packages could not be installed; the reason stands above. Check the network and run the command again.',
  );
  process.exit(1);
}
