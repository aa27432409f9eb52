import { open } from 'node:fs/promises';
import {
  type Answer,
  answerRun,
  type Knowledge,
  LogParquetWriter,
  type Outcome,
  type ReadJob,
  type RunAnswer,
  type RunReport,
  readLogger,
  readParquetLog,
  sentencesWritten,
} from '@furrow/engine';
import { OriginalDamaged, type Originals, openOriginals } from '@furrow/store/originals';

/** A file to be reviewed, with the job that was run. */
export interface LogToReview {
  /** Folder of the originals. */
  readonly folder: string;
  readonly sha256: string;
  /** Logger description by which it is read. */
  readonly logger: string | null;
  readonly rehearsal: boolean;
  readonly version: string;
  /** The job as it was run, with the answer to it; undefined for a job that has no plan. */
  readonly job: { readonly read: ReadJob; readonly answer: Answer } | undefined;
  readonly knowledge: Knowledge | undefined;
}

/** What was found in a file, as it is kept: the report and what a list shows of it, or why there is none. */
export interface ReviewedLog {
  readonly report: string | null;
  readonly summary: string | null;
  readonly trouble: string | null;
}

/** Events that a list shows of a run [-]. */
const EVENTS_SHOWN = 200;

const PARQUET = 'PAR1';

class Unreadable extends Error {}

/**
 * Reviews a file among the originals, piece by piece, and writes its rows as Parquet beside it. The file is held against
 * its hash meanwhile: one that is no longer what was kept is not reviewed.
 */
export async function reviewLog(asked: LogToReview): Promise<ReviewedLog> {
  const { logger, rehearsal, version, job, knowledge } = asked;
  const described = logger === null ? undefined : readLogger(logger);
  if (described?.ok === false)
    return noReview(`The logger description cannot be read: ${described.issues[0]?.message}`);
  const review = answerRun({
    version,
    rehearsal,
    given: described?.value.given,
    loggerRevision: described?.value.revision,
    ...(job === undefined ? {} : { job: { ...job, knowledge } }),
  });
  const originals = openOriginals(asked.folder, () => new Date());
  try {
    const report = (await isParquet(originals, asked.sha256))
      ? await reviewParquet(originals, asked, review, described?.value.given)
      : await reviewText(originals, asked.sha256, review);
    const written = sentencesWritten(report, 'metric');
    return { report: JSON.stringify(written), summary: JSON.stringify(summaryOf(report)), trouble: null };
  } catch (error) {
    if (error instanceof OriginalDamaged || error instanceof Unreadable) return noReview(error.message);
    throw error;
  }
}

function noReview(trouble: string): ReviewedLog {
  return { report: null, summary: null, trouble };
}

function summaryOf({ verdict, totals, passes, events }: RunReport): object {
  const shown = events.slice(0, EVENTS_SHOWN).map(({ kind, pass, start_s, end_s, from_mm, to_mm }) => ({
    kind,
    pass,
    start_s,
    end_s,
    from_mm,
    to_mm,
  }));
  return { verdict, totals, passes, events: shown };
}

async function isParquet(originals: Originals, sha256: string): Promise<boolean> {
  for await (const piece of originals.read(sha256))
    return Buffer.from(piece.subarray(0, PARQUET.length)).toString('latin1') === PARQUET;
  return false;
}

/** The rows of the file go into its Parquet as they are reviewed; a file that cannot be read leaves none. */
async function reviewText(originals: Originals, sha256: string, review: RunAnswer): Promise<RunReport> {
  let report: RunReport | undefined;
  const parquet = async function* (): AsyncGenerator<Uint8Array> {
    const writer = new LogParquetWriter();
    for await (const piece of originals.read(sha256))
      for (const batch of review.push(piece)) yield writer.push(batch);
    const end = review.end(sha256);
    if (!end.ok) throw new Unreadable(end.issues.map(({ message }) => message).join(' '));
    for (const batch of end.value.batches) yield writer.push(batch);
    yield writer.end();
    report = end.value.report;
  };
  await originals.putParquet(sha256, parquet());
  return report!;
}

async function reviewParquet(
  originals: Originals,
  { sha256 }: LogToReview,
  review: RunAnswer,
  given: Parameters<typeof readParquetLog>[2],
): Promise<RunReport> {
  // it is read from its end and in pieces, so that its hash is looked at beforehand
  for await (const _ of originals.read(sha256));
  const handle = await open(originals.path(sha256), 'r');
  try {
    const { size } = await handle.stat();
    const read: Outcome<Parameters<RunAnswer['endRows']>[0]> = await readParquetLog(
      {
        byteLength: size,
        slice: async (start, end = size) => {
          const bytes = new Uint8Array(Math.max(0, end - start));
          await handle.read(bytes, 0, bytes.length, start);
          return bytes.buffer;
        },
      },
      review.takeRows,
      given,
    );
    if (!read.ok) throw new Unreadable(read.issues.map(({ message }) => message).join(' '));
    return review.endRows(read.value, sha256);
  } finally {
    await handle.close();
  }
}
