/**
 * How often the reader finds the dialect of a file, over a folder of annotated files: `npm run dialects -- FOLDER`.
 *
 * The annotations are lines of `file_name|encoding|fields_delimiter|quotechar|...` in a file of the folder whose name
 * begins with ANNOTATIONS, or in the file named behind the folder. Files that are not there are counted apart.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { guessDialectOf } from '@furrow/engine';
import { readAnnotations } from './dialect-annotations.ts';

const [folder, named] = process.argv.slice(2);
const annotations = folder === undefined ? undefined : (named ?? findAnnotations(folder));
if (folder === undefined || annotations === undefined || !existsSync(annotations)) {
  console.error('Usage: npm run dialects -- FOLDER [ANNOTATIONS]');
  process.exit(2);
}

function findAnnotations(where: string): string | undefined {
  const name = existsSync(where)
    ? readdirSync(where).find((each) => /annotations?.*\.(?:txt|csv)$/iu.test(each))
    : undefined;
  return name === undefined ? undefined : join(where, name);
}

const counts = { files: 0, delimiter: 0, quote: 0, both: 0, absent: 0 };
for (const { file, delimiter, quote } of readAnnotations(readFileSync(annotations, 'utf8'))) {
  const path = join(folder, file);
  if (!existsSync(path)) {
    counts.absent += 1;
    continue;
  }
  const { dialect } = guessDialectOf(readFileSync(path));
  // a file of one column has no delimiter, one without quotes no quote; the usual ones stand in, as in the annotations
  const found = { delimiter: dialect.delimiter || ',', quote: dialect.quote || '"' };
  const right = { delimiter: found.delimiter === delimiter, quote: quote === '' || found.quote === quote };
  counts.files += 1;
  if (right.delimiter) counts.delimiter += 1;
  if (right.quote) counts.quote += 1;
  if (right.delimiter && right.quote) counts.both += 1;
  else
    console.log(
      `${file}: ${JSON.stringify(found.delimiter)} and ${found.quote}, annotated ${JSON.stringify(delimiter)} and ${quote || 'none'}`,
    );
}
const share = (count: number): string =>
  `${count} of ${counts.files} (${((100 * count) / counts.files).toFixed(2)} %)`;
console.log(`delimiter ${share(counts.delimiter)}, quote ${share(counts.quote)}, both ${share(counts.both)}`);
if (counts.absent > 0) console.log(`${counts.absent} annotated files are not in the folder`);
process.exitCode = counts.files === 0 ? 1 : 0;
