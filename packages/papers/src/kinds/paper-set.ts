import type { PaperDocument } from '../blocks/index.ts';
import { cardDocument } from './card-document.ts';
import { commissioningDocument } from './commissioning-document.ts';
import { estimateDocument } from './estimate-document.ts';
import { grooveReportDocument } from './groove-report-document.ts';
import { hotWorkDocument } from './hot-work-document.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';
import { procedureDocument } from './procedure-document.ts';
import { quickHeat } from './quick-heat.ts';
import { quoteDocument } from './quote-document.ts';
import { runRecordDocument } from './run-record-document.ts';
import { surveyOf } from './survey-of.ts';

/** Every kind of paper, in the order in which a job needs them; the name is that of its file too. */
export const PAPER_KINDS = [
  'set-up-card',
  'procedure-sheet',
  'commissioning-sheet',
  'hot-work-sheet',
  'run-record',
  'groove-report',
  'quote',
  'estimate',
] as const;

/** A kind of paper. */
export type PaperKind = (typeof PAPER_KINDS)[number];

const TITLES: Readonly<Record<PaperKind, string>> = {
  'set-up-card': 'Set-up card',
  'procedure-sheet': 'Procedure sheet',
  'commissioning-sheet': 'Connections and commissioning',
  'hot-work-sheet': 'Hot-work and hazard sheet',
  'run-record': 'Run record',
  'groove-report': 'Groove report',
  quote: 'Quote',
  estimate: 'Estimate',
};

/** What a kind of paper is called. */
export function paperTitle(kind: PaperKind): string {
  return TITLES[kind];
}

/** Why there is no paper of a kind yet; undefined where there is one. */
export function paperWanting(kind: PaperKind, { answer }: Pick<PaperSubject, 'answer'>): string | undefined {
  return kind === 'commissioning-sheet' && answer.supply === undefined
    ? 'without a kit nothing is known of what to connect and to read'
    : undefined;
}

/** Kinds that tell of preheat, waits or refill. */
const WITH_HEAT: ReadonlySet<PaperKind> = new Set(['procedure-sheet', 'quote', 'estimate']);

/** What a kind of paper is made of, with a quick look at the heat, or what was measured, where the paper tells of it. */
export function subjectFor(kind: PaperKind, subject: PaperSubject): PaperSubject {
  if (kind === 'groove-report' && subject.survey === undefined)
    return { ...subject, survey: surveyOf(subject) };
  if (subject.heat !== undefined || !WITH_HEAT.has(kind)) return subject;
  return { ...subject, heat: quickHeat(subject.read, subject.answer, subject.knowledge) };
}

/** Makes the paper of a kind. */
export function makePaper(kind: PaperKind, subject: PaperSubject, options: PaperOptions): PaperDocument {
  switch (kind) {
    case 'set-up-card':
      return cardDocument(subject.read, subject.answer, options);
    case 'procedure-sheet':
      return procedureDocument(subject, options);
    case 'commissioning-sheet':
      return commissioningDocument(subject, options);
    case 'hot-work-sheet':
      return hotWorkDocument(subject, options);
    case 'run-record':
      return runRecordDocument(subject, options);
    case 'groove-report':
      return grooveReportDocument(subject, options);
    case 'quote':
      return quoteDocument(subject, options);
    case 'estimate':
      return estimateDocument(subject, options);
  }
}
