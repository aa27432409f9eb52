export type { IssueCode } from './codes.ts';
export { ISSUE_CODES, RETIRED_CODES } from './codes.ts';
export { type FilePosition, type Issue, issueCodeSchema, issueSchema, type Outcome } from './issue.ts';
