export type { DefaultUsed, DocumentPath } from './complete.ts';
export { pathText } from './complete.ts';
export type { FieldFacts } from './field.ts';
export { type JobField, jobFields } from './fields.ts';
export type { Job, KitElectrode } from './job.ts';
export { type JsonSchema, jobJsonSchema } from './json-schema.ts';
export { JOB_TEXT_MOST } from './parse-text.ts';
export { type ReadJob, readJob } from './read-job.ts';
