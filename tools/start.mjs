import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled, npm, ROOT, requireNode } from './install.mjs';

requireNode();
ensureInstalled();

console.log('Building Furrow ...');
const build = npm(['run', 'build', '--silent'], { stdio: 'pipe', encoding: 'utf8' });
if (build.status !== 0) {
  console.error(`${build.stdout ?? ''}${build.stderr ?? ''}`);
  console.error('Furrow could not be built; the reason stands above.');
  process.exit(1);
}

const program = join(ROOT, 'packages', 'cli', 'bin', 'furrow.js');
if (!existsSync(program)) {
  console.error('The program packages/cli/bin/furrow.js is missing: this copy of Furrow is not complete.');
  process.exit(1);
}
// In this very process: Ctrl-C and a stop signal then reach the server itself and it closes its own files.
process.argv = [process.execPath, program, 'serve', ...process.argv.slice(2)];
await import(pathToFileURL(program).href);
