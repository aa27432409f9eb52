export type { Edit } from './edit.ts';
export { type Edited, editFile } from './edit-file.ts';
export { canBeLeftOut, fieldList, jobFieldAt } from './field-list.ts';
export { entriesAt, type JobFile, jobFile, writtenAt } from './job-file.ts';
export { pathOf, patternOf } from './path.ts';
