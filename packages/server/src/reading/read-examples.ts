import { readdir, readFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import type { Example } from '@furrow/contract';
import { topField } from '@furrow/engine';
import { contentOf } from './job-reading.ts';
import { kitContentOf } from './kit-reading.ts';

const ENDING = '.yaml';

/** What comes with the program to try it with. */
export interface Examples {
  readonly jobs: readonly Example[];
  readonly kits: readonly Example[];
}

/** Reads the demo jobs and kits of a folder, each by name. */
export async function readExamples(folder: string): Promise<Examples> {
  const files = (await readdir(folder)).filter((name) => extname(name) === ENDING).sort();
  const jobs: Example[] = [];
  const kits: Example[] = [];
  for (const file of files) {
    const text = await readFile(join(folder, file), 'utf8');
    const name = basename(file, ENDING);
    if (topField(text, 'furrow_kit') !== undefined)
      kits.push({ name, title: kitContentOf(text).title, text });
    else jobs.push({ name, title: contentOf(text).title, text });
  }
  return { jobs, kits };
}
