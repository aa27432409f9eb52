export { type JobDifference, jobDifference } from './difference.ts';
export { type JobField, jobFields } from './fields.ts';
export type { Job, KitElectrode } from './job.ts';
export { jobJsonSchema } from './json-schema.ts';
export { JOB_TEXT_MOST, type ReadJob, readJob } from './read-job.ts';
