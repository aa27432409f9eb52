export type { Candidate, LimitFunction } from './candidate.ts';
export type { Easing } from './easing.ts';
export { downToNothing, evenly, written } from './easing-steps.ts';
export {
  type Limit,
  limitSchema,
  type Provenance,
  provenanceSchema,
  type Sensitivity,
  type Source,
  sourceSchema,
  type Verdict,
} from './limit.ts';
export { type LimitStatement, limitOf } from './limit-of.ts';
export { withSensitivity } from './sensitivity.ts';
export type { Stated } from './stated.ts';
