import { type ChildProcessByStdio, spawn } from 'node:child_process';
import type { Readable, Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';

const PROGRAM = fileURLToPath(new URL('../packages/cli/bin/furrow.js', import.meta.url));

/** How a run of the program ended and what it wrote. */
export interface FurrowRun {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

interface RunOptions {
  /** What is given on standard input. */
  readonly input?: string | Uint8Array;
  /** Ends the program by force when it is aborted. */
  readonly signal?: AbortSignal;
  /** Whether its reader has gone before it writes anything. */
  readonly unread?: boolean;
  /** Open file that its output goes to. */
  readonly output?: number;
}

/** Runs the built program as another program would. */
export function runFurrow(
  args: readonly string[],
  { input, signal, unread, output }: RunOptions = {},
): Promise<FurrowRun> {
  const child = start(args, output);
  if (unread) child.stdout?.destroy();
  signal?.addEventListener('abort', () => child.kill('SIGKILL'), { once: true });
  // a program that has read enough closes the pipe
  child.stdin.on('error', () => undefined);
  child.stdin.end(input);
  return endOf(child);
}

/** The bench as the built program serves it, with an environment of its own where one is given. */
export function serveFurrow(
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): {
  readonly url: Promise<string>;
  readonly stop: () => Promise<FurrowRun>;
  /** Ends it by force, as when the power goes. */
  readonly kill: () => Promise<FurrowRun>;
} {
  const child = start(['serve', ...args], 'pipe', environment);
  const { stdout } = child;
  if (stdout === null) throw new Error('the output of the program is not read');
  const end = endOf(child);
  const url = new Promise<string>((resolve, reject) => {
    let out = '';
    stdout.on('data', (text: string) => {
      out += text;
      const found = /Furrow is ready: (\S+)\n/u.exec(out)?.[1];
      if (found !== undefined) resolve(found);
    });
    void end.then(({ err }) => reject(new Error(`the program ended: ${err}`)));
  });
  return {
    url,
    stop() {
      child.kill('SIGTERM');
      return end;
    },
    kill() {
      child.kill('SIGKILL');
      return end;
    },
  };
}

type Child = ChildProcessByStdio<Writable, Readable | null, Readable>;

function start(
  args: readonly string[],
  output: number | 'pipe' = 'pipe',
  environment: Readonly<Record<string, string>> = {},
): Child {
  const child = spawn(process.execPath, [PROGRAM, ...args], {
    stdio: ['pipe', output, 'pipe'],
    env: { ...process.env, ...environment },
  }) as Child;
  child.stdout?.setEncoding('utf8');
  child.stderr.setEncoding('utf8');
  return child;
}

function endOf(child: Child): Promise<FurrowRun> {
  return new Promise((resolve, reject) => {
    let [out, err] = ['', ''];
    child.stdout?.on('data', (text: string) => {
      out += text;
    });
    child.stderr.on('data', (text: string) => {
      err += text;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
  });
}
