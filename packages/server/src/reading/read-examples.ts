import { readdir, readFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import type { Example } from '@furrow/contract';
import { topField } from '@furrow/engine';
import { GAUGE_READING } from './gauge-reading.ts';
import { contentOf } from './job-reading.ts';
import { KIT_READING } from './kit-reading.ts';
import { READINGS_READING } from './readings-reading.ts';
import type { ShopFileReading } from './shop-file-reading.ts';
import { TRIALS_READING } from './trials-reading.ts';

const ENDING = '.yaml';
/** Folder, in that of the demo jobs and kits, of what their shop has tried and gauged. */
const TRIALS = 'trials';
/** The same of what was run and gauged on the demo jobs, each by the name of its job. */
const READINGS = 'readings';
/** The same of the gauges of their shop, with studies and checks. */
const GAUGES = 'gauges';

/** What comes with the program to try it with. */
export interface Examples {
  readonly jobs: readonly Example[];
  readonly kits: readonly Example[];
  /** Invented histories of the demo shop. */
  readonly trials: readonly Example[];
  /** Invented readings of demo jobs, by their names. */
  readonly readings: readonly Example[];
  /** Invented gauges of the demo shop. */
  readonly gauges: readonly Example[];
}

/** Reads the demo jobs and kits of a folder, each by name. */
export async function readExamples(folder: string): Promise<Examples> {
  const jobs: Example[] = [];
  const kits: Example[] = [];
  for (const { name, text } of await filesOf(folder)) {
    if (topField(text, 'furrow_kit') !== undefined)
      kits.push({ name, title: KIT_READING.contentOf(text).title, text });
    else jobs.push({ name, title: contentOf(text).title, text });
  }
  const titled = async (inside: string, { contentOf: read }: ShopFileReading): Promise<Example[]> =>
    (await filesOf(join(folder, inside))).map(({ name, text }) => ({ name, title: read(text).title, text }));
  const trials = await titled(TRIALS, TRIALS_READING);
  const readings = await titled(READINGS, READINGS_READING);
  const gauges = await titled(GAUGES, GAUGE_READING);
  return { jobs, kits, trials, readings, gauges };
}

async function filesOf(folder: string): Promise<{ readonly name: string; readonly text: string }[]> {
  const files = (await readdir(folder)).filter((name) => extname(name) === ENDING).sort();
  return Promise.all(
    files.map(async (file) => ({
      name: basename(file, ENDING),
      text: await readFile(join(folder, file), 'utf8'),
    })),
  );
}
