import { cardDocument } from './card-document.ts';
import { commissioningDocument } from './commissioning-document.ts';
import { grooveReportDocument } from './groove-report-document.ts';
import type { PaperDocument } from './paper-document.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';
import { procedureDocument } from './procedure-document.ts';
import { runRecordDocument } from './run-record-document.ts';

/** Every kind of paper, in the order in which a job needs them; the name is that of its file too. */
export const PAPER_KINDS = [
  'set-up-card',
  'procedure-sheet',
  'commissioning-sheet',
  'run-record',
  'groove-report',
] as const;

/** A kind of paper. */
export type PaperKind = (typeof PAPER_KINDS)[number];

const TITLES: Readonly<Record<PaperKind, string>> = {
  'set-up-card': 'Set-up card',
  'procedure-sheet': 'Procedure sheet',
  'commissioning-sheet': 'Connections and commissioning',
  'run-record': 'Run record',
  'groove-report': 'Groove report',
};

/** What a kind of paper is called. */
export function paperTitle(kind: PaperKind): string {
  return TITLES[kind];
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
    case 'run-record':
      return runRecordDocument(subject, options);
    case 'groove-report':
      return grooveReportDocument(subject, options);
  }
}
