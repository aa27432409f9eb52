import type { DefaultUsed } from '@furrow/engine';
import { badInput, type Run, type Told } from '../frame/command.ts';
import { type Loaded, loadJob, loadKit } from '../frame/load-document.ts';

/** Checks a job file without planning it: tells its revision and defaults, or what is wrong. */
export const job: Run<object> = async ([file = '-']) =>
  checked(file, await loadJob(file), ({ job: { title } }) => title);

/** Checks a kit file: tells its revision and defaults, or what is wrong. */
export const kit: Run<object> = async ([file = '-']) =>
  checked(file, await loadKit(file), ({ kit: { title } }) => title);

interface Checked {
  readonly revision: string;
  readonly defaultsUsed: readonly DefaultUsed[];
}

function checked<Read extends Checked>(
  file: string,
  loaded: Loaded<Read>,
  titleOf: (read: Read) => string,
): Told {
  if (!loaded.ok) return badInput(loaded.lines);
  const { revision, defaultsUsed } = loaded.read;
  const lines = [
    `${file} is in order: “${titleOf(loaded.read)}”, revision ${revision.slice(0, 12)}.`,
    ...(defaultsUsed.length > 0 ? ['Defaults that stand in for fields the file does not have:'] : []),
    ...defaultsUsed.map(({ path, value, why }) => `  ${path}: ${value} (${why})`),
  ];
  return { exit: 0, print: lines.join('\n') };
}
