import { createReadStream } from 'node:fs';
import { dirname, resolve } from 'node:path';
import {
  type Issue,
  JOB_TEXT_MOST,
  type Outcome,
  type ReadGauge,
  type ReadJob,
  type ReadKit,
  type ReadLogger,
  type ReadReadings,
  type ReadSummary,
  type ReadTrials,
  readGauge,
  readJob,
  readKit,
  readKnowledgeFile,
  readLogger,
  readReadings,
  readSummary,
  readTrials,
  type UnitSystem,
} from '@furrow/engine';

/** A UTF-8 character takes four bytes at most. */
const BYTES_MOST = 4 * JOB_TEXT_MOST;

/** A job or kit file as read, or the lines that tell what is wrong with it. */
export type Loaded<Read> =
  | { readonly ok: true; readonly read: Read; readonly text: string }
  | { readonly ok: false; readonly lines: readonly string[] };

/** The files of a question about a job. */
export interface JobFiles {
  readonly job: string;
  readonly kit: string | undefined;
  readonly readings: string | undefined;
  /** Trials that the shop has learned from, and summaries of shops. */
  readonly knowledge: readonly string[] | undefined;
}

type LoadedFiles =
  | {
      readonly ok: true;
      readonly read: {
        readonly job: ReadJob;
        readonly kit: ReadKit | undefined;
        readonly readings: ReadReadings | undefined;
        readonly trials: ReadTrials | undefined;
        readonly summary: ReadSummary | undefined;
        /** Job and kit as written. */
        readonly texts: {
          readonly job: string;
          readonly kit: string | undefined;
          readonly readings: string | undefined;
        };
      };
    }
  | { readonly ok: false; readonly lines: readonly string[] };

/** Reads a job from a file, or from standard input for `-`; mistakes are told in both units where the reader's are not named. */
export function loadJob(file: string, reader?: UnitSystem): Promise<Loaded<ReadJob>> {
  return load(file, 'job', (text) => readJob(text, reader));
}

/** Reads a kit, as `loadJob` a job. */
export function loadKit(file: string, reader?: UnitSystem): Promise<Loaded<ReadKit>> {
  return load(file, 'kit', (text) => readKit(text, reader));
}

/** Reads a logger description from a file, or from standard input for `-`. */
export function loadLogger(file: string): Promise<Loaded<ReadLogger>> {
  return load(file, 'logger', readLogger);
}

/** Reads a shop's trials from a file, or from standard input for `-`. */
export function loadTrials(file: string): Promise<Loaded<ReadTrials>> {
  return load(file, 'trials', readTrials);
}

/** Reads a gauge with its study and checks from a file, or from standard input for `-`. */
export function loadGauge(file: string): Promise<Loaded<ReadGauge>> {
  return load(file, 'gauge', readGauge);
}

/**
 * Reads the gauge that depths were read with: the file that a person names, else the one that a readings file does, which
 * is looked for from the folder of that file; undefined where neither names one.
 */
export function loadGaugeOf(
  named: string | undefined,
  record: { readonly file: string; readonly readings: ReadReadings | undefined } | undefined,
): Promise<Loaded<ReadGauge>> | undefined {
  if (named !== undefined) return loadGauge(named);
  const told = record?.readings?.readings.gauge_file;
  return record === undefined || told === undefined
    ? undefined
    : loadGauge(resolve(dirname(record.file), told));
}

/** Reads a summary of what shops have learned from a file, or from standard input for `-`. */
export function loadSummary(file: string): Promise<Loaded<ReadSummary>> {
  return load(file, 'summary', readSummary);
}

/** What is known, from files of it. */
export interface LoadedKnowledge {
  readonly trials: ReadTrials | undefined;
  /** Every shop that a summary tells of. */
  readonly summary: ReadSummary | undefined;
}

/** Reads files of what is known: at most one trials file, and at most one summary. */
export async function loadKnowledge(files: readonly string[]): Promise<Loaded<LoadedKnowledge>> {
  let known: LoadedKnowledge = { trials: undefined, summary: undefined };
  for (const file of files) {
    const loaded = await load(file, 'knowledge', readKnowledgeFile);
    if (!loaded.ok) return loaded;
    const { is, read } = loaded.read;
    if (known[is] !== undefined) {
      const what = is === 'trials' ? 'One trials file is a shop’s own' : 'One summary is enough';
      return { ok: false, lines: [`${file}: ${what}; merge summaries with furrow knowledge merge.`] };
    }
    known = { ...known, [is]: read };
  }
  return { ok: true, read: known, text: '' };
}

/** Reads a job and what is named beside it; what is wrong with any of them is told. */
export async function loadJobFiles(files: JobFiles, units: UnitSystem): Promise<LoadedFiles> {
  if (
    Object.values(files)
      .flat()
      .filter((file) => file === '-').length > 1
  ) {
    return { ok: false, lines: ['Standard input holds one file: name the others by their paths.'] };
  }
  const job = await loadJob(files.job, units);
  const kit = files.kit === undefined ? undefined : await loadKit(files.kit, units);
  const readings =
    files.readings === undefined ? undefined : await load(files.readings, 'readings', readReadings);
  const known = await loadKnowledge(files.knowledge ?? []);
  const lines = [job, kit, readings, known].flatMap((each) =>
    each === undefined || each.ok ? [] : each.lines,
  );
  if (!job.ok || kit?.ok === false || readings?.ok === false || known.ok === false)
    return { ok: false, lines };
  const texts = { job: job.text, kit: kit?.text, readings: readings?.text };
  return {
    ok: true,
    read: { job: job.read, kit: kit?.read, readings: readings?.read, ...known.read, texts },
  };
}

async function load<Read>(
  file: string,
  kind: 'job' | 'kit' | 'readings' | 'trials' | 'knowledge' | 'summary' | 'logger' | 'gauge',
  read: (text: string) => Outcome<Read>,
): Promise<Loaded<Read>> {
  let text: string;
  try {
    text = await readText(file, kind);
  } catch (error) {
    return { ok: false, lines: [`${file}: ${whyUnreadable(error as NodeJS.ErrnoException, kind)}`] };
  }
  const outcome = read(text.replace(/^\uFEFF/u, ''));
  if (outcome.ok) return { ok: true, read: outcome.value, text };
  return { ok: false, lines: outcome.issues.map((issue) => issueLine(file, issue)) };
}

/** Reads no further than a document can reach, so that a device or a film given by mistake ends soon. */
async function readText(file: string, kind: string): Promise<string> {
  const source = file === '-' ? process.stdin : createReadStream(file);
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of source) {
    size += (chunk as Buffer).length;
    if (size > BYTES_MOST) throw new Error(`this has more than ${BYTES_MOST} bytes; a ${kind} has fewer.`);
    chunks.push(chunk as Buffer);
  }
  return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
}

/** Why a file cannot be read, in words. */
export function whyUnreadable(error: NodeJS.ErrnoException, kind: string): string {
  switch (error.code) {
    case 'ENOENT':
      return 'there is no such file.';
    case 'EISDIR':
      return `this is a folder; a ${kind} file is wanted.`;
    case 'EACCES':
      return 'this user may not read the file.';
    case 'ERR_ENCODING_INVALID_ENCODED_DATA':
      return 'the file is not text in UTF-8; save it as UTF-8 and try again.';
    default:
      return error.message;
  }
}

/** One issue on one line: file, line and column, message, and what would be accepted. */
export function issueLine(file: string, issue: Issue): string {
  const place = issue.position === undefined ? '' : `:${issue.position.line}:${issue.position.column}`;
  const nearest = issue.nearest === undefined ? '' : ` Nearest: ${issue.nearest}.`;
  return `${file}${place}: ${issue.message}${nearest} [${issue.code}]`;
}
