import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, ROOT, requireNode } from './install.mjs';

const SUFFIX = '.bench.ts';

requireNode();
ensureInstalled();

const args = process.argv.slice(2);
const only = args.indexOf('--only');
const wanted = only >= 0 ? args.splice(only, 2)[1] : undefined;
const partAt = args.indexOf('--part');
// A benchmark of several parts says itself which there are.
const part = partAt >= 0 ? args.splice(partAt, 2).slice(1) : [];
const names = readdirSync(join(ROOT, 'benchmarks'))
  .filter((file) => file.endsWith(SUFFIX))
  .map((file) => file.slice(0, -SUFFIX.length))
  .sort();
if ((only >= 0 && !names.includes(wanted)) || (part.length > 0 && only < 0) || args.length > 0) {
  console.error(
    `Usage: npm run bench -- [--only NAME [--part PART]], with NAME one of: ${names.join(', ') || '(none yet)'}`,
  );
  process.exit(2);
}

// One after the other, each in a process of its own: they must not share a heap, nor the cores.
const failed = names
  .filter((name) => wanted === undefined || name === wanted)
  .filter((name) => {
    console.log(`\n== ${name}`);
    const flags = ['--conditions=furrow-source', '--import', 'tsx', '--expose-gc'];
    const file = join(ROOT, 'benchmarks', `${name}${SUFFIX}`);
    return (
      spawnSync(process.execPath, [...flags, file, ...part], { cwd: ROOT, stdio: 'inherit' }).status !== 0
    );
  });
if (failed.length > 0) console.error(`\nFailed: ${failed.join(', ')}`);
process.exitCode = failed.length === 0 ? 0 : 1;
