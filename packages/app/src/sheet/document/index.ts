export type { Edit } from './edit.ts';
export { editFile } from './edit-file.ts';
export { gaugeFile } from './gauge-file.ts';
export { fieldList, jobFieldAt } from './job-fields.ts';
export { jobFile } from './job-file.ts';
export { kitFieldAt, kitFile } from './kit-file.ts';
export { pathOf, patternOf } from './path.ts';
export { readingsFile } from './readings-file.ts';
export { entriesAt, type TextFile, writtenAt } from './text-file.ts';
