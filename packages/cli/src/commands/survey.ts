import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { PROGRAM_VERSION } from '@furrow/contract';
import {
  answerJob,
  answerSurvey,
  type DepthByLog,
  depthByLog,
  freeId,
  type GivenSurvey,
  gaugeOfSurvey,
  isReadingsFile,
  knowledgeFrom,
  type LengthUnit,
  parseAmount,
  type ReadReadings,
  readReadings,
  type SurveyQuestion,
  type UnitSystem,
  type WrittenEntry,
  withEntry,
} from '@furrow/engine';
import { renderSurveyText, surveyFiles } from '@furrow/papers';
import { badInput, type Run, type Told } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { loadGaugeOf, loadJobFiles, loadTrials } from '../frame/load-document.ts';
import { printed } from '../frame/on-job.ts';
import { replaceFile, whyUnwritable } from '../output/disk.ts';

interface SurveyOptions {
  readonly json: boolean;
  readonly units: UnitSystem;
  readonly job?: string;
  readonly run?: string;
  /** Gauge file, whose study tells the uncertainty of a reading. */
  readonly gauge?: string;
  readonly kit?: string;
  readonly knowledge?: readonly string[];
  /** Unit of lengths whose unit the files do not state. */
  readonly unit?: LengthUnit;
  readonly vertical?: 'height' | 'range';
  readonly station?: string;
  readonly filter?: string;
  /** Trials file of the shop to which what was measured is added. */
  readonly teach?: string;
  /** Folder for sections and depth curve as CSV, DXF and SVG. */
  readonly output?: string;
}

type JobPart = NonNullable<SurveyQuestion['job']>;

/** Measures a groove from gauge tables, scans or clouds, and judges the seam of a job by them. */
export const run: Run<SurveyOptions> = async (names, options, streams) => {
  const files: { name: string; bytes: Uint8Array }[] = [];
  for (const name of names) {
    try {
      files.push({ name: basename(name), bytes: readFileSync(name === '-' ? 0 : name) });
    } catch (error) {
      return badInput([`${name}: ${whyUnreadable(error as NodeJS.ErrnoException)}`]);
    }
  }
  const station = lengthOf(options.station, '--station');
  const filter = lengthOf(options.filter, '--filter');
  const wrong = [station, filter].flatMap((each) => (typeof each === 'string' ? [each] : []));
  if (wrong.length > 0) return badInput(wrong);
  const job = options.job === undefined ? undefined : await jobPart(options.job, options);
  if (job !== undefined && 'lines' in job) return badInput(job.lines);
  const ran = options.run === undefined ? undefined : runDepth(options.run, job);
  if (ran !== undefined && 'lines' in ran) return badInput(ran.lines);
  const gauge = await loadGaugeOf(options.gauge, recordAmong(names, files));
  if (gauge?.ok === false) return badInput(gauge.lines);
  const trials = options.teach === undefined ? undefined : await trialsText(options.teach, job);
  if (trials !== undefined && 'lines' in trials) return badInput(trials.lines);
  const given: GivenSurvey = {
    unit: options.unit,
    vertical: options.vertical,
    station: station as number | undefined,
  };
  const outcome = answerSurvey({
    files,
    progress: (share) => streams.progress?.(`survey ${Math.floor(100 * share)} %`),
    given,
    version: PROGRAM_VERSION,
    ...(job === undefined ? {} : { job }),
    ...(ran === undefined ? {} : { run: ran.depth, ran: ran.passes }),
    // one that a person names counts before what the record says; one that the record names is the shop's
    ...(gauge === undefined || options.gauge === undefined ? {} : { gauge: gaugeOfSurvey(gauge.read) }),
    ...(gauge === undefined || options.gauge !== undefined ? {} : { shopGauge: gaugeOfSurvey(gauge.read) }),
    ...(trials === undefined ? {} : { entry: { id: freeId(trials.text, 'job'), date: today() } }),
    ...(filter === undefined ? {} : { filter: filter as number }),
  });
  streams.progress?.('');
  if (!outcome.ok)
    return badInput(
      outcome.issues.map(
        ({ message, code, accepted }) =>
          `${message}${accepted === undefined ? '' : ` Accepted: ${accepted}.`} [${code}]`,
      ),
    );
  const report = outcome.value;
  const entry = report.seam?.teaches.entry;
  if (trials !== undefined && options.teach !== undefined && entry !== null && entry !== undefined) {
    const written = taught(options.teach, withEntry(trials.text, entry as WrittenEntry));
    if (written !== undefined) return written;
  }
  if (options.output !== undefined) {
    const written = write(options.output, report);
    if (written !== undefined) return written;
  }
  return {
    exit: EXIT.plan,
    print: printed(options.json, report, () => renderSurveyText(report, options.units)),
  };
};

/** The readings file among what is measured, the last of several; undefined where there is none that can be read. */
function recordAmong(
  names: readonly string[],
  files: readonly { readonly bytes: Uint8Array }[],
): { readonly file: string; readonly readings: ReadReadings } | undefined {
  const index = files.findLastIndex(({ bytes }) => isReadingsFile(bytes));
  if (index < 0) return undefined;
  const outcome = readReadings(new TextDecoder().decode(files[index]!.bytes));
  return outcome.ok ? { file: names[index]!, readings: outcome.value } : undefined;
}

async function jobPart(
  file: string,
  { kit, knowledge, units }: SurveyOptions,
): Promise<JobPart | { lines: readonly string[] }> {
  const loaded = await loadJobFiles({ job: file, kit, readings: undefined, knowledge }, units);
  if (!loaded.ok) return { lines: loaded.lines };
  const { job: read, kit: kitRead, trials, summary } = loaded.read;
  const known = knowledgeFrom(trials, summary);
  return {
    read,
    answer: answerJob({ job: read, version: PROGRAM_VERSION, kit: kitRead, knowledge: known }),
    knowledge: known,
  };
}

/** The trials file to which what was measured is added. */
async function trialsText(
  file: string,
  job: JobPart | undefined,
): Promise<{ text: string } | { lines: readonly string[] }> {
  if (job === undefined) return { lines: ['--teach goes with --job: the job says how it was cut.'] };
  const loaded = await loadTrials(file);
  return loaded.ok ? { text: readFileSync(file, 'utf8') } : { lines: loaded.lines };
}

/** The day on the clock of this computer [ISO date]. */
function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function taught(file: string, text: string): Told | undefined {
  try {
    replaceFile(file, text);
    return undefined;
  } catch (error) {
    const why = whyUnwritable(error);
    if (why === undefined) throw error;
    return badInput([`${file}: the entry could not be added: ${why}`]);
  }
}

/** Depth along the seam by the log of a run, and how its passes were run. */
function runDepth(file: string, job: JobPart | undefined): DepthByLog | { lines: readonly string[] } {
  if (job?.answer.basis?.plan === undefined)
    return { lines: ['--run goes with --job, and with a job that has a plan.'] };
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    return { lines: [`${file}: ${whyUnreadable(error as NodeJS.ErrnoException)}`] };
  }
  const outcome = depthByLog({ bytes }, job);
  return outcome.ok
    ? outcome.value
    : { lines: outcome.issues.map(({ message, code }) => `${file}: ${message} [${code}]`) };
}

function write(folder: string, report: Parameters<typeof surveyFiles>[0]): Told | undefined {
  try {
    mkdirSync(folder, { recursive: true });
    for (const { name, content } of surveyFiles(report)) writeFileSync(join(folder, name), content());
    return undefined;
  } catch (error) {
    const why = whyUnwritable(error);
    if (why === undefined) throw error;
    return badInput([`${folder}: the files could not be written: ${why}`]);
  }
}

/** A length [m], undefined where there is none, or what is wrong with it. */
function lengthOf(text: string | undefined, option: string): number | string | undefined {
  if (text === undefined) return undefined;
  const read = parseAmount(text, 'length');
  return read.ok ? read.value : `${option}: ${read.issues[0]?.message ?? 'not a length'}`;
}

function whyUnreadable({ code, message }: NodeJS.ErrnoException): string {
  if (code === 'ENOENT') return 'there is no such file.';
  if (code === 'EISDIR') return 'this is a folder; a file is wanted.';
  if (code === 'EACCES') return 'this user may not read the file.';
  return message;
}
