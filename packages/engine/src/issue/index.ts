export type { IssueCode } from './codes.ts';
export { ISSUE_CODES, RETIRED_CODES } from './codes.ts';
export type { FilePosition, Issue, Outcome } from './issue.ts';
