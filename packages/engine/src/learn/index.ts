export { crpsOfMixture } from './crps.ts';
export { beliefOfFamily, type Knowledge, knowledgeOf, learnFrom } from './knowledge.ts';
export {
  type Family,
  familyName,
  type GaugedPass,
  type GaugedStation,
  type ShopObservation,
  type SizeBand,
  sizeBand,
} from './observation.ts';
export { readKnowledge } from './read-knowledge.ts';
export { type ReadTrials, readTrials, TRIALS_TEXT_MOST, trialsJsonSchema } from './read-trials.ts';
export { type Drift, driftOf, type ScoredEntry, type Shift, scoreEntries, shiftOf } from './scores.ts';
export type { Trials } from './trials-schema.ts';
