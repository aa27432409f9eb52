export { type About, aboutSchema } from './about-schema.ts';
export { answerSchema } from './answer-schema.ts';
export { API_PATHS, type ApiPath, fillPath, type PathParameters } from './api-path.ts';
export { type CardOptions, cardOptionSchema } from './card-option-schema.ts';
export { type ConflictBody, conflictSchema, type ErrorBody, errorSchema } from './error-schema.ts';
export { type Example, exampleSchema } from './example-schema.ts';
export { HTTP_STATUS } from './http-status.ts';
export { issueCodeSchema, issueSchema } from './issue-schema.ts';
export { PROGRAM_VERSION } from './program-version.ts';
export { REQUEST_BYTES_MOST } from './request-limit.ts';
export {
  type CardRequest,
  cardRequestSchema,
  type JobSave,
  type JobText,
  jobParametersSchema,
  jobSaveSchema,
  jobTextSchema,
  revisionParametersSchema,
} from './request-schema.ts';
export {
  type BinnedJob,
  binnedJobSchema,
  type JobSummary,
  jobSummarySchema,
  type RevisionSummary,
  revisionSummarySchema,
  type SavedJob,
  type SavedRevision,
  savedJobSchema,
  savedRevisionSchema,
} from './saved-job-schema.ts';
