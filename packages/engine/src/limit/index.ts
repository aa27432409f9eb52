export type { Candidate, LimitFunction } from './candidate.ts';
export type { Limit, Provenance, Sensitivity, Source, Verdict } from './limit.ts';
export { type LimitStatement, limitOf } from './limit-of.ts';
export { withSensitivity } from './sensitivity.ts';
