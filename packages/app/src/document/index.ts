export type { Edit } from './edit.ts';
export { editFile } from './edit-file.ts';
export { fieldList, jobFieldAt } from './field-list.ts';
export { entriesAt, type JobFile, jobFile, writtenAt } from './job-file.ts';
export { pathOf, patternOf } from './path.ts';
