import type { GivenReading, TableReading } from '../../delimited/index.ts';
import type { Outcome } from '../../issue/index.ts';
import type { ReadJob } from '../../job/index.ts';
import type { Knowledge } from '../../learn/index.ts';
import { type Answer, type RunReport, stateReading, stateRun } from '../../result/index.ts';
import {
  type ClockNote,
  causesOf,
  depthAlong,
  expectationOf,
  isWhole,
  type Judged,
  type LogBatch,
  type LogEnd,
  LogReader,
  type RunOutcome,
  reviewRun,
  stretchesOf,
} from '../../run/index.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';
import { electrodePlanned, electrodeUsed } from './electrode-use.ts';
import { fitOf } from './fit-of-job.ts';
import { remainingOf } from './remaining-passes.ts';
import { cannotTell, verdictOf } from './run-words.ts';

/** Marks the readings of a rehearsal, in the first line of its file. */
export const REHEARSAL_MARK = 'Furrow rehearsal';

/** What a log is reviewed with. */
export interface RunQuestion {
  /** Version of the program, written into the result. */
  readonly version: string;
  /** The job that was run, as read, with the answer to it; without them a log is reviewed by itself. */
  readonly job?: {
    readonly read: ReadJob;
    readonly answer: Answer;
    readonly knowledge?: Knowledge | undefined;
  };
  /** What a person says of how the log is read. */
  readonly given?: GivenReading | undefined;
  /** Content hash of the logger description that says it. */
  readonly loggerRevision?: string | undefined;
  /** The log still grows: the passes that remain are planned only between two passes, when there is time to gauge. */
  readonly live?: boolean | undefined;
  /** Whether it is known beforehand that no rig was run; else the file's own mark tells. */
  readonly rehearsal?: boolean | undefined;
}

/** A log under review. */
export interface RunAnswer {
  /** Takes the next bytes of the file; gives the rows that they settle, which must not be changed. */
  readonly push: (bytes: Uint8Array) => readonly LogBatch[];
  /** Ends the file, whose SHA-256 is given in hex; the last rows and the report, or why the file cannot be read. */
  readonly end: (sha256: string) => Outcome<{
    readonly batches: readonly LogBatch[];
    readonly report: RunReport;
    readonly reading: TableReading;
  }>;
  /** Takes rows of a log that was read elsewhere, such as from Parquet, with what was mended in their clock. */
  readonly takeRows: (batch: LogBatch, notes: readonly ClockNote[]) => void;
  /** Ends a log that was read elsewhere. */
  readonly endRows: (end: LogEnd, sha256: string) => RunReport;
}

/**
 * Reviews a log from its bytes, piece by piece: how it was read, states, events and places, sums, depth along the seam,
 * what is not as it ought to be, and what to do about it.
 *
 * @param question - job, answer, how the log is read, version [record], each as read
 * @returns the review under way [record]
 * @source none: composition
 * @example
 * answerRun({ version: '0' }).end('').ok // => false
 */
export function answerRun({
  version,
  job,
  given,
  loggerRevision,
  rehearsal: played,
  live = false,
}: RunQuestion): RunAnswer {
  const judged = job === undefined ? undefined : judgedOf(job);
  const reader = new LogReader(given);
  const review = reviewRun(judged?.expected);
  let notes = 0;
  const take = (batches: readonly LogBatch[]): readonly LogBatch[] => {
    const fresh = reader.clockNotes.slice(notes);
    notes += fresh.length;
    batches.forEach((batch, index) => {
      review.push(batch, index === 0 ? fresh : []);
    });
    return batches;
  };
  const reportOf = (end: LogEnd, sha256: string): RunReport => {
    const outcome = review.end();
    const along =
      judged &&
      depthAlong(
        outcome.passes,
        judged.plan,
        judged.belief,
        judged.expected.length,
        judged.job.kit.push_angle,
      );
    const stretches = judged === undefined ? [] : stretchesOf(outcome, along, judged);
    const used = electrodeUsed(outcome, judged?.expected);
    const planned = judged && electrodePlanned(outcome, judged.expected);
    const fit = judged && fitOf(outcome, judged.expected);
    const remaining =
      judged && !isWhole(outcome, judged.expected) && !(live && isBurning(outcome))
        ? remainingOf(outcome, along, stretches, judged)
        : undefined;
    const rehearsal = played === true || end.reading.preamble.some((line) => line.includes(REHEARSAL_MARK));
    const told = { outcome, judged, stretches, used, planned, fit, remaining, rehearsal };
    const depth = judged?.job.groove.depth;
    return stateRun({
      verdict: verdictOf(told),
      inputs: {
        file_sha256: sha256,
        job_revision: job?.read.revision ?? null,
        logger_revision: loggerRevision ?? null,
        program_version: version,
        knowledge_id: judged?.belief.knowledge.id ?? null,
        rehearsal,
      },
      reading: stateReading(end),
      outcome,
      turn: judged?.expected.girth === true ? judged.expected.length : undefined,
      causes: (event) => causesOf(event, outcome.events, event.rose === true),
      along,
      wanted: depth && {
        depth: depth.wanted,
        least: depth.wanted - depth.minus,
        most: depth.wanted + depth.plus,
        length: judged.expected.length,
      },
      electrodeUsed: used,
      electrodePlanned: planned,
      stretches,
      remaining,
      fits: fit?.fits,
      cannotTell: cannotTell(outcome, judged !== undefined),
    });
  };
  return {
    push: (bytes) => take(reader.push(bytes)),
    end: (sha256) => {
      const read = reader.end();
      if (!read.ok) return read;
      const batches = take(read.value.batches);
      const { end } = read.value;
      return { ok: true, value: { batches, report: reportOf(end, sha256), reading: end.reading } };
    },
    takeRows: (batch, notes) => review.push(batch, notes),
    endRows: reportOf,
  };
}

/** Time without an arc from which a pass that is followed live is over [s] (judgement). */
const BETWEEN_PASSES = 5;

/** Whether a pass is under way where the log ends so far. */
function isBurning({ passes, duration }: RunOutcome): boolean {
  return duration - (passes.at(-1)?.end ?? duration) < BETWEEN_PASSES;
}

/** What the run of a job is held against; undefined where the job has no plan. */
function judgedOf({ read, answer, knowledge }: NonNullable<RunQuestion['job']>): Judged | undefined {
  if (answer.basis === undefined) return undefined;
  const { plan } = answer.basis;
  const belief = beliefOfJob(read.job, knowledge);
  return { job: read.job, plan, belief, expected: expectationOf(read.job, plan, belief) };
}
