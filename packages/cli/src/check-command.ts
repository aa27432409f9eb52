import type { DefaultUsed } from '@furrow/engine';
import { EXIT } from './exit-code.ts';
import { loadJob, loadKit } from './load-document.ts';
import type { Streams } from './streams.ts';

/** Checks a job file without planning it: tells its revision and defaults, or what is wrong. */
export async function checkCommand(file: string, streams: Streams): Promise<number> {
  const loaded = await loadJob(file);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { job, revision, defaultsUsed } = loaded.read;
  tellInOrder(file, job.title, revision, defaultsUsed, streams);
  return 0;
}

/** Checks a kit file: tells its revision and defaults, or what is wrong. */
export async function checkKitCommand(file: string, streams: Streams): Promise<number> {
  const loaded = await loadKit(file);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { kit, revision, defaultsUsed } = loaded.read;
  tellInOrder(file, kit.title, revision, defaultsUsed, streams);
  return 0;
}

function tellInOrder(
  file: string,
  title: string,
  revision: string,
  defaultsUsed: readonly DefaultUsed[],
  streams: Streams,
): void {
  streams.print(`${file} is in order: “${title}”, revision ${revision.slice(0, 12)}.`);
  if (defaultsUsed.length > 0) streams.print('Defaults that stand in for fields the file does not have:');
  for (const used of defaultsUsed) streams.print(`  ${used.path}: ${used.value} (${used.why})`);
}
