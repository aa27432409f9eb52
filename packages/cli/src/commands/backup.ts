import { randomUUID } from 'node:crypto';
import { createWriteStream, existsSync } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { PROGRAM_VERSION } from '@furrow/contract';
import { type BackupReport, type Company, openCompany, StoreFailure } from '@furrow/store';
import { badInput, type Run } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { folderOf, originalsIn, type StoreOptions, storePlace } from '../frame/store-place.ts';
import { whyUnwritable } from '../output/disk.ts';

/** Writes everything that is kept into one file; it gets its name when it is whole and on the disk. */
export const run: Run<StoreOptions> = async ([file = ''], options) => {
  if (existsSync(file)) return badInput([`${file} is there already; nothing was written.`]);
  const unfinished = `${file}.unfinished-${process.pid}`;
  try {
    const company = await openCompany(storePlace(options), { now: () => new Date(), newId: randomUUID });
    try {
      const report = await written(company, unfinished, folderOf(options));
      await rename(unfinished, file);
      await flushed(dirname(file));
      const exit = report.missing.length === 0 ? EXIT.plan : EXIT.refusal;
      return { exit, print: words(file, report), problem: report.missing };
    } finally {
      await company.close();
      await rm(unfinished, { force: true });
    }
  } catch (error) {
    if (error instanceof StoreFailure) return badInput([error.message]);
    const why = whyUnwritable(error);
    if (why === undefined) throw error;
    return badInput([`${file}: the backup could not be written: ${why}`]);
  }
};

async function written(company: Company, path: string, folder: string): Promise<BackupReport> {
  const lines = company.backup({ originalsOf: originalsIn(folder), version: PROGRAM_VERSION });
  let report: BackupReport | undefined;
  async function* texts(): AsyncGenerator<string> {
    for (;;) {
      const next = await lines.next();
      if (next.done === true) {
        report = next.value;
        return;
      }
      yield next.value;
    }
  }
  // readable by nobody else: it holds everything, hashes of passwords too
  await pipeline(
    Readable.from(texts(), { objectMode: true, highWaterMark: 1 }),
    createGzip(),
    createWriteStream(path, { flags: 'wx', mode: 0o600, flush: true }),
  );
  if (report === undefined) throw new Error('the backup has no end');
  return report;
}

async function flushed(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  await handle.sync().finally(() => handle.close());
}

function words(file: string, { rows, files, sha256 }: BackupReport): string {
  const count = Object.values(rows).reduce((sum, each) => sum + each, 0);
  return `Backup of ${count} rows and ${files} files in ${file}.\nSHA-256 of its lines: ${sha256}`;
}
