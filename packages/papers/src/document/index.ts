export { boundUnits } from './bound-units.ts';
export { cardDocument } from './card-document.ts';
export { chanceWords } from './chance-words.ts';
export type { Figure } from './figure.ts';
export { actionText, gaugePlaces, gaugeTable, readingText } from './gauge-table.ts';
export { hotWorkDocument } from './hot-work-document.ts';
export { jobWords } from './job-words.ts';
export { limitWords, sourceWords } from './limit-words.ts';
export type {
  ColumnsBlock,
  DrawingBlock,
  Field,
  FieldsBlock,
  FiguresBlock,
  HeadingBlock,
  ListBlock,
  PaperBlock,
  PaperCode,
  PaperDocument,
  PaperSize,
  ParagraphBlock,
  SignaturesBlock,
  TableBlock,
  TableColumn,
} from './paper-document.ts';
export { makePaper, PAPER_KINDS, type PaperKind, paperTitle, paperWanting, subjectFor } from './paper-set.ts';
export type { CheckedReading, PaperOptions, PaperSubject } from './paper-subject.ts';
export { bandText, passTable } from './pass-table.ts';
export { expectationFigures, passesNote, settingFigures } from './setting-figures.ts';
