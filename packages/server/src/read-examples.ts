import { readdir, readFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import type { Example } from '@furrow/contract';
import { contentOf } from './job-reading.ts';

const ENDING = '.yaml';

/** Reads the demo jobs of a folder, by name. */
export async function readExamples(folder: string): Promise<Example[]> {
  const files = (await readdir(folder)).filter((name) => extname(name) === ENDING).sort();
  return Promise.all(
    files.map(async (file) => {
      const text = await readFile(join(folder, file), 'utf8');
      return { name: basename(file, ENDING), title: contentOf(text).title, text };
    }),
  );
}
