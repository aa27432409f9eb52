export { cardDocument } from './card-document.ts';
export { hotWorkDocument } from './hot-work-document.ts';
export { makePaper, PAPER_KINDS, type PaperKind, paperTitle, paperWanting, subjectFor } from './paper-set.ts';
export type { PaperOptions, PaperSubject } from './paper-subject.ts';
