import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, answerRun, knowledgeFrom, type RunQuestion, sentencesWritten } from '@furrow/engine';
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
  try {
    const source = file === '-' ? process.stdin : createReadStream(file, { highWaterMark: PIECE });
    for await (const piece of source) {
      hash.update(piece as Buffer);
      review.push(piece as Buffer);
      bytes += (piece as Buffer).length;
      streams.progress?.(`log ${Math.round(bytes / 1e6)} MB`);
    }
  } catch (error) {
    return badInput([`${file}: ${whyUnreadable(error as NodeJS.ErrnoException, 'log')}`]);
  } finally {
    streams.progress?.('');
  }
  const read = review.end(hash.digest('hex'));
  if (!read.ok) return badInput(read.issues.map((issue) => issueLine(file, issue)));
  const { report } = read.value;
  const { units, json } = options;
  const title = held.question.job?.read.job.title ?? `Log ${file}`;
  return {
    exit: EXIT.plan,
    print: printed(json, sentencesWritten(report, 'metric'), () => renderRunText(report, title, units)),
  };
};

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
