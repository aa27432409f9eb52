export { type About, aboutSchema } from './about-schema.ts';
export {
  type Account,
  accountLinkSchema,
  accountRightsSchema,
  accountSchema,
  identifierSchema,
  linkUseSchema,
  type Machine,
  machineSchema,
  madeMachineSchema,
  newAccountSchema,
  newMachineSchema,
  passwordChangeSchema,
  type Session,
  sessionSchema,
  shopChoiceSchema,
  shopNameSchema,
  shopSchema,
  signInSchema,
} from './account-schema.ts';
export { API_PATHS, type ApiPath, fillPath, type PathParameters, SHOP_HEADER } from './api-path.ts';
export {
  type CardOptions,
  cardOptionSchema,
  type SavedCardOptions,
  savedCardOptionSchema,
} from './card-option-schema.ts';
export {
  type Commissioning,
  type CommissioningConflict,
  type CommissioningSave,
  commissioningConflictSchema,
  commissioningSaveSchema,
  commissioningSchema,
} from './commissioning-schema.ts';
export { type ShopFigures, shopFiguresSchema } from './company-schema.ts';
export { type ConflictBody, conflictSchema, type ErrorBody, errorSchema } from './error-schema.ts';
export { type Example, exampleSchema } from './example-schema.ts';
export {
  type CountedFaults,
  type FaultCase,
  faultCaseParametersSchema,
  faultCaseSchema,
  faultCountsSchema,
} from './fault-count-schema.ts';
export {
  type HistoryEntry,
  historyEntrySchema,
  historyQuestionSchema,
} from './history-schema.ts';
export { HTTP_STATUS } from './http-status.ts';
export {
  examplePaperParametersSchema,
  exampleParametersSchema,
  type FilledPaper,
  filledPaperSchema,
  jobPaperParametersSchema,
  type ListedPaper,
  type PaperChoices,
  type PaperList,
  type Printed,
  paperListSchema,
  paperOptionSchema,
  printedSchema,
} from './paper-schema.ts';
export { CALLERS, type Caller, mayDo, PERMISSIONS, RIGHTS, type Right, ROLES } from './permission.ts';
export { PROGRAM_VERSION } from './program-version.ts';
export { ORIGINAL_BYTES_MOST, REQUEST_BYTES_MOST } from './request-limit.ts';
export {
  type CardRequest,
  cardRequestSchema,
  type JobSave,
  type JobText,
  jobParametersSchema,
  jobSaveSchema,
  jobTextSchema,
  originalParametersSchema,
  type PlanRequest,
  planRequestSchema,
  revisionParametersSchema,
} from './request-schema.ts';
export {
  type FramesTaken,
  framesTakenSchema,
  type LiveSource,
  type LiveState,
  liveSourceSchema,
  liveStateSchema,
  loggerKeepSchema,
  loggerParametersSchema,
  type OpenedRun,
  type Original,
  openedRunSchema,
  originalSchema,
  type RunBegin,
  type RunKeep,
  type RunSummary,
  runBeginSchema,
  runKeepSchema,
  runParametersSchema,
  runSummarySchema,
  type SavedLogger,
  type SavedRun,
  savedLoggerSchema,
  savedRunSchema,
} from './run-schema.ts';
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
export {
  gaugeSchemas,
  kitSchemas,
  knowledgeSchemas,
  readingsSchemas,
  type SavedShopFile,
  type ShopFileConflict,
  type ShopFileRevisionSummary,
  type ShopFileSave,
  type ShopFileSchemas,
  shopFileRevisionSchema,
} from './shop-file-schema.ts';
