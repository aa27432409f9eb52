import { spawnSync } from 'node:child_process';

/** What a program prints, run beside the benchmarks; nothing if it is missing or fails. */
export function output(program: string, args: readonly string[]): string | undefined {
  const { status, stdout, error } = spawnSync(program, args, {
    cwd: import.meta.dirname,
    encoding: 'utf8',
    timeout: 120_000,
  });
  return error === undefined && status === 0 ? stdout : undefined;
}
