import {
  type Answer,
  answerSurvey,
  gaugeFrom,
  type ReadJob,
  type SurveyInput,
  type SurveyReport,
} from '@furrow/engine';
import { bytesOf } from './bytes-of.ts';
import { learnedFrom } from './learned-from.ts';
import type { WorkerLink, WorkStep } from './protocol.ts';

/** A file that was measured, as it was handed in. */
export interface MeasuredFile {
  readonly name: string;
  readonly file: Blob;
}

/** What was measured of a groove, with the job that it was cut for. */
export interface SurveyRequest {
  /** Text of what was run and gauged; undefined where nothing was. */
  readonly readings: string | undefined;
  readonly files: readonly MeasuredFile[];
  readonly version: string;
  readonly read: ReadJob;
  readonly answer: Answer;
  /** Text of the trials that the answer was made with. */
  readonly knowledge?: string | undefined;
  /** Text of the gauge that the shop keeps. */
  readonly gauge?: string | undefined;
  /** What names the readings as an entry of the shop's trials. */
  readonly entry: { readonly id: string; readonly date: string };
}

/** What was measured, or why a file cannot be read. */
export type SurveyPart =
  | { readonly is: 'surveyed'; readonly report: SurveyReport; readonly unread: readonly UnreadFile[] }
  | { readonly is: 'unread'; readonly why: readonly string[] };

/** A file that holds nothing of a groove that can be told. */
export interface UnreadFile {
  readonly name: string;
  readonly why: string;
}

/** The worker that measures grooves. */
export type SurveyWorker = WorkerLink<SurveyRequest, SurveyPart>;

/** What measuring uses of the browser; a test hands in tools of its own. */
export interface SurveyTools {
  /** Reads a file at once, as only a worker may. */
  readonly bytesOf: (file: Blob) => ArrayBuffer;
}

/** Part of the work that fetching the files is taken to be [-]. */
const FETCHING = 0.1;

/** Measures what was handed in and fuses it along the seam; a file that cannot be read leaves the others as they are. */
export function* surveyParts(
  { readings, files, version, read, answer, knowledge, gauge, entry }: SurveyRequest,
  tell: (share: number) => void = () => undefined,
  tools: SurveyTools = { bytesOf },
): Generator<WorkStep<SurveyPart>> {
  const inputs: SurveyInput[] = [];
  const unread: UnreadFile[] = [];
  for (const [index, { name, file }] of files.entries()) {
    yield { is: 'progress', share: (FETCHING * index) / files.length };
    const bytes = new Uint8Array(tools.bytesOf(file));
    inputs.push({ name, bytes });
  }
  yield { is: 'progress', share: FETCHING };
  const progress = (share: number): void => tell(FETCHING + (1 - FETCHING) * share);
  const job = { read, answer, knowledge: learnedFrom(knowledge) };
  const shopGauge = gaugeFrom(gauge);
  const record: SurveyInput[] =
    readings === undefined ? [] : [{ name: 'readings', bytes: new TextEncoder().encode(readings) }];
  const whole = answerSurvey({ files: [...inputs, ...record], job, shopGauge, version, entry, progress });
  if (whole.ok) {
    yield { is: 'part', part: { is: 'surveyed', report: whole.value, unread } };
    return;
  }
  // one file that nobody can read must not hide what the others say
  const readable = inputs.filter((input) => {
    const outcome = answerSurvey({ files: [input, ...record], version });
    if (!outcome.ok)
      unread.push({ name: input.name, why: outcome.issues.map(({ message }) => message).join(' ') });
    return outcome.ok;
  });
  const rest = answerSurvey({ files: [...readable, ...record], job, shopGauge, version, entry, progress });
  yield {
    is: 'part',
    part: rest.ok
      ? { is: 'surveyed', report: rest.value, unread }
      : { is: 'unread', why: rest.issues.map(({ message }) => message) },
  };
}
