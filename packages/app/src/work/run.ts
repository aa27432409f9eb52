import {
  type Answer,
  answerRun,
  beliefOfJob,
  type ColumnQuantity,
  fileHash,
  type GivenReading,
  guessTable,
  type LogTrace,
  REHEARSAL_CHANNELS,
  REHEARSAL_MARK,
  type ReadJob,
  type RunReport,
  readFaults,
  readLogger,
  rehearsalHead,
  rehearsalRows,
  rehearse,
  traceLog,
  writeLogger,
} from '@furrow/engine';
import { bytesOf } from './bytes-of.ts';
import { learnedFrom } from './learned-from.ts';
import type { WorkerLink, WorkStep } from './protocol.ts';

/** Where the rows of a run come from: a file, or a rig that is played. */
export type RunSource =
  | { readonly is: 'file'; readonly file: Blob }
  | { readonly is: 'rehearsal'; readonly faults: string; readonly seed: number };

/** A log to be reviewed, with the job that was run. */
export interface RunRequest {
  readonly source: RunSource;
  readonly version: string;
  readonly read: ReadJob;
  readonly answer: Answer;
  /** Text of the trials that the answer was made with. */
  readonly knowledge?: string | undefined;
  /** What a person said of how the file is read. */
  readonly given?: GivenReading | undefined;
  /** Text of a logger description by which it is read. */
  readonly logger?: string | undefined;
  /** The log still grows. */
  readonly live?: boolean | undefined;
}

/** A log as it was reviewed, or why it cannot be read. */
export type RunPart =
  | {
      readonly is: 'reviewed';
      readonly report: RunReport;
      readonly trace: LogTrace;
      /** The description that has the next file of this logger read the same way. */
      readonly logger: string;
      /** The file that was reviewed; of a rig that is played, the one that its logger would write. */
      readonly file: Blob;
    }
  | {
      readonly is: 'unread';
      readonly why: readonly string[];
      /** Columns of the table that it is all the same, which a person may know; empty where it is none. */
      readonly columns: readonly UnreadColumn[];
    };

/** A column of a file that cannot be read as a log yet. */
export interface UnreadColumn {
  /** Empty where the file has no header. */
  readonly name: string;
  readonly quantity: ColumnQuantity | undefined;
  /** Its first cells. */
  readonly cells: readonly string[];
}

/** The worker that reviews logs. */
export type RunWorker = WorkerLink<RunRequest, RunPart>;

/** What reviewing uses of the browser; a test hands in tools of its own. */
export interface RunTools {
  /** Reads a piece of a file at once, as only a worker may. */
  readonly bytesOf: (piece: Blob) => ArrayBuffer;
}

/** Bytes read at once. */
const PIECE = 1 << 20;

/** Reviews the log piece by piece, with the share read on the way there. */
export function* runParts(
  { source, version, read, answer, knowledge: trials, given, logger, live }: RunRequest,
  { bytesOf: bytesIn }: RunTools = { bytesOf },
): Generator<WorkStep<RunPart>> {
  const described = logger === undefined ? undefined : readLogger(logger);
  if (described?.ok === false) {
    yield unread(described.issues.map(({ message }) => `Logger description: ${message}`));
    return;
  }
  const knowledge = learnedFrom(trials);
  const review = answerRun({
    version,
    live,
    given: { ...described?.value.given, ...given },
    loggerRevision: described?.value.revision,
    ...(answer.basis === undefined ? {} : { job: { read, answer, knowledge } }),
  });
  const trace = traceLog();
  const hash = fileHash();
  const pieces = source.is === 'file' ? piecesOf(source.file, bytesIn) : played(source, read, answer, trials);
  const written: Uint8Array<ArrayBuffer>[] = [];
  for (const { bytes, share } of pieces) {
    if (source.is === 'rehearsal') written.push(bytes);
    hash.add(bytes);
    for (const batch of review.push(bytes)) trace.push(batch);
    yield { is: 'progress', share };
  }
  const end = review.end(hash.hex());
  if (!end.ok) {
    const head = source.is === 'file' ? new Uint8Array(bytesOf(source.file.slice(0, HEAD))) : undefined;
    yield unread(
      end.issues.map(({ message }) => message),
      head && columnsOf(head, { ...described?.value.given, ...given }),
    );
    return;
  }
  const { batches, report, reading } = end.value;
  for (const batch of batches) trace.push(batch);
  yield {
    is: 'part',
    part: {
      is: 'reviewed',
      report,
      trace: trace.end(),
      logger: writeLogger(reading, ''),
      file: source.is === 'file' ? source.file : new Blob(written),
    },
  };
}

function unread(why: readonly string[], columns: readonly UnreadColumn[] = []): WorkStep<RunPart> {
  return { is: 'part', part: { is: 'unread', why, columns } };
}

/** Bytes of the beginning by which columns are told [bytes], and cells of each that are shown [-]. */
const HEAD = 1 << 16;
const CELLS_SHOWN = 4;

function columnsOf(head: Uint8Array, given: GivenReading): readonly UnreadColumn[] {
  const table = guessTable(head, given);
  if (!table.ok) return [];
  const { columns, preview } = table.value;
  return columns.map(({ name, quantity }, at) => ({
    name,
    quantity,
    cells: preview.slice(0, CELLS_SHOWN).map((cells) => cells[at] ?? ''),
  }));
}

interface Piece {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly share: number;
}

function* piecesOf(file: Blob, bytesOf: RunTools['bytesOf']): Generator<Piece> {
  for (let at = 0; at < file.size; at += PIECE) {
    const end = Math.min(file.size, at + PIECE);
    yield { bytes: new Uint8Array(bytesOf(file.slice(at, end))), share: end / file.size };
  }
}

/** Rows per second of a rehearsal on the page: what most loggers write. */
const RATE = 20;

/** A rehearsal as the bytes of its file, so that it goes the way of every log. */
function* played(
  { faults, seed }: { readonly faults: string; readonly seed: number },
  { job, revision }: ReadJob,
  { basis }: Answer,
  trials: string | undefined,
): Generator<Piece> {
  if (basis === undefined) return;
  const { plan } = basis;
  const asked = readFaults(faults, job, plan, seed);
  const belief = beliefOfJob(job, learnedFrom(trials));
  const show = rehearse({ job, plan, belief, seed, rate: RATE, faults: asked.ok ? asked.value : [] });
  const bytes = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);
  const mark = `${REHEARSAL_MARK}: these readings were made up, no rig was run; seed ${seed}, job ${revision.slice(0, 12)}`;
  yield { bytes: bytes(rehearsalHead(mark, REHEARSAL_CHANNELS)), share: 0 };
  for (const batch of show.batches)
    yield { bytes: bytes(rehearsalRows(batch, REHEARSAL_CHANNELS)), share: 0.5 };
}

/** The memory of the drawing, which a worker can hand over. */
export function traceBuffers(part: RunPart): ArrayBuffer[] {
  if (part.is === 'unread') return [];
  const { start, end, way, silent, channels } = part.trace;
  const lists = [start, end, way, silent, ...Object.values(channels).flatMap((each) => Object.values(each))];
  return lists.map(({ buffer }) => buffer).filter((buffer) => buffer instanceof ArrayBuffer);
}
