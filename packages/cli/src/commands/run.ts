import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { PROGRAM_VERSION } from '@furrow/contract';
import {
  answerJob,
  answerRun,
  type GivenReading,
  knowledgeFrom,
  type Outcome,
  type RunAnswer,
  type RunQuestion,
  type RunReport,
  readParquetLog,
  sentencesWritten,
} from '@furrow/engine';
import { renderRunText } from '@furrow/papers';
import { badInput, type Run } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { issueLine, loadJobFiles, loadLogger, whyUnreadable } from '../frame/load-document.ts';
import { type JobOptions, printed } from '../frame/on-job.ts';

interface RunOptions extends JobOptions {
  /** Job that was run; the log is reviewed by itself without. */
  readonly job?: string;
  /** Logger description by which the file is read. */
  readonly as?: string;
  readonly json: boolean;
}

/** Bytes read at once. */
const PIECE = 1 << 20;

/** Reviews the log of a run: how it was read, what happened where, and what to do about it. */
export const run: Run<RunOptions> = async ([file = '-'], options, streams) => {
  const held = await questionOf(options);
  if (!held.ok) return badInput(held.lines);
  const review = answerRun(held.question);
  const hash = createHash('sha256');
  let bytes = 0;
  let parquet = false;
  try {
    parquet = file !== '-' && (await isParquet(file));
    const source = file === '-' ? process.stdin : createReadStream(file, { highWaterMark: PIECE });
    for await (const piece of source) {
      hash.update(piece as Buffer);
      if (!parquet) review.push(piece as Buffer);
      bytes += (piece as Buffer).length;
      streams.progress?.(`log ${Math.round(bytes / 1e6)} MB`);
    }
  } catch (error) {
    return badInput([`${file}: ${whyUnreadable(error as NodeJS.ErrnoException, 'log')}`]);
  } finally {
    streams.progress?.('');
  }
  const read = parquet
    ? await reportOfParquet(file, review, held.question.given, hash.digest('hex'))
    : reportOfText(review, hash.digest('hex'));
  if (!read.ok) return badInput(read.issues.map((issue) => issueLine(file, issue)));
  const report = read.value;
  const { units, json } = options;
  const title = held.question.job?.read.job.title ?? `Log ${file}`;
  return {
    exit: EXIT.plan,
    print: printed(json, sentencesWritten(report, 'metric'), () => renderRunText(report, title, units)),
  };
};

/** Whether a file begins as Parquet does; only one that lies on disk can be read so, piece by piece from its end. */
async function isParquet(file: string): Promise<boolean> {
  const handle = await open(file, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(4), 0, 4, 0);
    return bytesRead === 4 && buffer.toString('latin1') === 'PAR1';
  } finally {
    await handle.close();
  }
}

function reportOfText(review: RunAnswer, sha256: string): Outcome<RunReport> {
  const read = review.end(sha256);
  return read.ok ? { ok: true, value: read.value.report } : read;
}

async function reportOfParquet(
  file: string,
  review: RunAnswer,
  given: GivenReading | undefined,
  sha256: string,
): Promise<Outcome<RunReport>> {
  const handle = await open(file, 'r');
  try {
    const { size } = await handle.stat();
    const place = {
      byteLength: size,
      slice: async (start: number, end = size): Promise<ArrayBuffer> => {
        const bytes = new Uint8Array(Math.max(0, end - start));
        await handle.read(bytes, 0, bytes.length, start);
        return bytes.buffer;
      },
    };
    const read = await readParquetLog(place, review.takeRows, given);
    return read.ok ? { ok: true, value: review.endRows(read.value, sha256) } : read;
  } finally {
    await handle.close();
  }
}

async function questionOf(
  options: RunOptions,
): Promise<
  | { readonly ok: true; readonly question: RunQuestion }
  | { readonly ok: false; readonly lines: readonly string[] }
> {
  const logger = options.as === undefined ? undefined : await loadLogger(options.as);
  if (logger?.ok === false) return logger;
  const base: RunQuestion = {
    version: PROGRAM_VERSION,
    given: logger?.read.given,
    loggerRevision: logger?.read.revision,
  };
  if (options.job === undefined) {
    return options.kit === undefined && options.knowledge === undefined
      ? { ok: true, question: base }
      : { ok: false, lines: ['--kit and --knowledge go with --job: name the job that was run.'] };
  }
  const { kit, knowledge: files } = options;
  const loaded = await loadJobFiles(
    { job: options.job, kit, knowledge: files, readings: undefined },
    options.units,
  );
  if (!loaded.ok) return loaded;
  const { job, trials, summary } = loaded.read;
  const knowledge = knowledgeFrom(trials, summary);
  const answer = answerJob({ job, version: PROGRAM_VERSION, kit: loaded.read.kit, knowledge });
  if (answer.basis === undefined)
    return { ok: false, lines: [`${options.job}: this job has no plan that a run could be held against.`] };
  return { ok: true, question: { ...base, job: { read: job, answer, knowledge } } };
}
