import { EXIT } from './exit-code.ts';
import { loadJob } from './load-job.ts';
import type { Streams } from './streams.ts';

/** Checks a job file without planning it: tells its revision and defaults, or what is wrong. */
export async function checkCommand(file: string, streams: Streams): Promise<number> {
  const loaded = await loadJob(file);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { job, revision, defaultsUsed } = loaded.read;
  streams.print(`${file} is in order: “${job.title}”, revision ${revision.slice(0, 12)}.`);
  if (defaultsUsed.length > 0) streams.print('Defaults that stand in for fields the file does not have:');
  for (const used of defaultsUsed) streams.print(`  ${used.path}: ${used.value} (${used.why})`);
  return 0;
}
