/**
 * What a worker thread does: everything that takes long. It sees no store and no request; what it is asked and what it
 * gives are plain data.
 */
import { PROGRAM_VERSION } from '@furrow/contract';
import {
  type Answer,
  answerJob,
  answerSurvey,
  gaugeFrom,
  type Knowledge,
  knowledgeOf,
  mergeSummaries,
  type ReadJob,
  type ReadKit,
  readKnowledge,
  readTrials,
  type SurveyInput,
  type SurveyReport,
  summaryOf,
  writeSummary,
} from '@furrow/engine';
import { cardDocument, type PaperOptions, renderHtml, renderPdf } from '@furrow/papers';
import { Refused, type RefusedMore } from '../guard/refused.ts';
import {
  type PaperSource,
  type PossibleFile,
  paperDocument,
  paperFile,
  possibleFiles,
} from './paper-file.ts';
import { type LogToReview, type ReviewedLog, reviewLog } from './review-log.ts';
import { type FiguresAsked, figuresOf, type WorkedFigures } from './shop-figures.ts';

/** What a plan is asked of. The same question has the same answer. */
export interface Question {
  readonly read: ReadJob;
  readonly kit: ReadKit | undefined;
  /** Text of the trials that the shop has learned from, known to be readable; the published rows alone without. */
  readonly knowledge: string | undefined;
}

/** What a set-up card is made of. */
export interface CardSource {
  readonly read: ReadJob;
  readonly answer: Answer;
  readonly options: PaperOptions;
}

/** What was made, or why it cannot be. */
export type Made<T> =
  | { readonly made: T }
  | {
      readonly refused: {
        readonly code: Refused['code'];
        readonly message: string;
        readonly more: RefusedMore;
      };
    };

/** Plans a job. */
export const answer = told(({ read, kit, knowledge }: Question) =>
  answerJob({ job: read, version: PROGRAM_VERSION, kit, knowledge: learned(knowledge) }),
);

/** Draws a set-up card as PDF. */
export const cardPdf = told((card: CardSource) => renderPdf(documentOf(card)));

/** Writes a set-up card as a page. */
export const cardPage = told((card: CardSource) => renderHtml(documentOf(card)));

/** Makes the paper or drawing of a name. */
export const file = told(({ source, name }: { readonly source: PaperSource; readonly name: string }) =>
  paperFile(withKnowledge(source), name),
);

/** Writes the paper of a kind as a page. */
export const page = told(({ source, kind }: { readonly source: PaperSource; readonly kind: string }) =>
  renderHtml(paperDocument(withKnowledge(source), kind)),
);

/** What was measured of the groove of a job. */
export interface SurveyAsked {
  readonly read: ReadJob;
  readonly answer: Answer;
  /** Text of the trials that the answer was made with, where it was. */
  readonly trials: string | undefined;
  /** Text of the gauge that the shop keeps, where it does. */
  readonly gauge: string | undefined;
  /** What was run and gauged, and the files that were measured. */
  readonly files: readonly SurveyInput[];
}

/** Says what was measured of a groove. */
export const survey = told(({ read, answer: planned, trials, gauge, files }: SurveyAsked): SurveyReport => {
  const outcome = answerSurvey({
    files,
    job: { read, answer: planned, knowledge: learned(trials) },
    shopGauge: gaugeFrom(gauge),
    version: PROGRAM_VERSION,
  });
  if (outcome.ok) return outcome.value;
  const { issues } = outcome;
  throw new Refused('SURVEY_NOT_READABLE', issues[0]?.message ?? '', { issues });
});

/** What a shop's own files tell of it. */
export const figures = told((asked: FiguresAsked): WorkedFigures => figuresOf(asked));

/** What shops have learned together, as a summary file. */
export const companySummary = told((trials: readonly string[]): string =>
  writeSummary(
    mergeSummaries(
      trials.flatMap((text) => {
        const read = readTrials(text);
        return read.ok ? [summaryOf(knowledgeOf(read.value))] : [];
      }),
    ),
  ),
);

/** Tells which papers and drawings there can be. */
export const list = told((source: PaperSource): readonly PossibleFile[] => possibleFiles(source));

/** Reviews the file of a run. */
export const review = told(
  ({
    trials,
    ...asked
  }: Omit<LogToReview, 'knowledge'> & { readonly trials: string | undefined }): Promise<ReviewedLog> =>
    reviewLog({ ...asked, knowledge: learned(trials) }),
);

/** What was learned last: learning anew from the same trials would cost every plan its time. */
let latest: { readonly text: string; readonly knowledge: Knowledge } | undefined;

function learned(text: string | undefined): Knowledge | undefined {
  if (text === undefined) return undefined;
  if (latest?.text === text) return latest.knowledge;
  const outcome = readKnowledge(text);
  if (!outcome.ok) throw new Error('trials that could be read when they were asked for cannot be read');
  latest = { text, knowledge: outcome.value };
  return outcome.value;
}

function withKnowledge({ trials, gauge, subject, ...source }: PaperSource): PaperSource {
  return { ...source, subject: { ...subject, knowledge: learned(trials), gauge: gaugeFrom(gauge) } };
}

function documentOf({ read, answer: planned, options }: CardSource): ReturnType<typeof cardDocument> {
  return cardDocument(read, planned, options);
}

/** A refusal loses its code on the way between threads; it goes as a value. */
function told<Asked, T>(make: (asked: Asked) => T | Promise<T>): (asked: Asked) => Promise<Made<T>> {
  return async (asked) => {
    try {
      return { made: await make(asked) };
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      const { code, message, more } = error;
      return { refused: { code, message, more } };
    }
  };
}
