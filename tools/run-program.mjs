import { spawn } from 'node:child_process';
import { basename } from 'node:path';
import { ROOT } from './install.mjs';

/** Runs a program; its exit status, or null where a signal ended it or it could not be started. */
function run(program, args, onStart) {
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      cwd: ROOT,
      stdio: onStart ? ['ignore', 'pipe', 'pipe'] : 'inherit',
      shell: process.platform === 'win32' && program === 'npm',
    });
    onStart?.(child);
    child.on('error', (error) => {
      console.error(`${program}: ${error.message}`);
      resolve(null);
    });
    child.on('close', resolve);
  });
}

function heading(text) {
  process.stdout.write(`\n== ${text}\n`);
}

/** Runs a program beside others; what it writes is seen at once under its heading. */
export function runSeen(title, program, args) {
  heading(title);
  return run(program, args);
}

/**
 * Runs a program beside others. What it writes is held back and printed in one piece under its heading when it has ended, so
 * that what runs at the same time does not mix with it.
 */
export async function runHeld(title, program, args) {
  const written = [];
  const keep = (bytes) => written.push(bytes);
  const status = await run(program, args, ({ stdout, stderr }) => {
    stdout.on('data', keep);
    stderr.on('data', keep);
  });
  heading(title);
  process.stdout.write(Buffer.concat(written));
  return status;
}

/** Runs a script of package.json beside others, its output held back; whether it ended well. */
export async function runScript(name) {
  const npm = process.env.npm_execpath;
  const args = ['run', '--silent', name];
  const status =
    npm && basename(npm) === 'npm-cli.js'
      ? await runHeld(name, process.execPath, [npm, ...args])
      : await runHeld(name, 'npm', args);
  return status === 0;
}
