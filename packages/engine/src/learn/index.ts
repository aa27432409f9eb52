export { crpsOfMixture } from './crps.ts';
export { beliefOfFamily, knowledgeOf, learnFrom } from './knowledge.ts';
export { WIDTH_NOISE } from './learned-quantities.ts';
export { type JobAhead, type NextTrial, nextTrial, type TrialWindow } from './next-trial.ts';
export {
  type Family,
  familyName,
  type GaugedPass,
  type GaugedStation,
  type ShopObservation,
  type SizeBand,
  sizeBand,
} from './observation.ts';
export { type KnowledgeFile, knowledgeFrom, readKnowledge, readKnowledgeFile } from './read-knowledge.ts';
export {
  type ReadSummary,
  readSummary,
  SUMMARY_TEXT_MOST,
  summaryJsonSchema,
  writeSummary,
} from './read-summary.ts';
export { type ReadTrials, readTrials, TRIALS_TEXT_MOST, trialsJsonSchema } from './read-trials.ts';
export { type Drift, driftOf, type ScoredEntry, type Shift, scoreEntries, shiftOf } from './scores.ts';
export type { Knowledge } from './shop-knowledge.ts';
export { mergeSummaries, summaryOf } from './summary.ts';
export type { ShopSummary } from './summary-schema.ts';
export type { Trials } from './trials-schema.ts';
export {
  type EntryChange,
  freeId,
  newEntries,
  newTrials,
  type WrittenEntry,
  withCorrected,
  withEntry,
  withPutBack,
  withTakenOut,
  writtenEntries,
} from './written-trials.ts';
