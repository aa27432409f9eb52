export { checkFaultModel } from './check-fault-model.ts';
export { countFaults, type FaultCounts } from './count-faults.ts';
export { FAULT_MODEL } from './fault-model.ts';
export { type FaultBehind, faultBehindSchema, faultsBehind } from './faults-behind.ts';
export type {
  FaultCause,
  FaultEvidence,
  FaultModel,
  FaultObservable,
  FaultOutcome,
  OutcomeChance,
  ReadingChance,
  YesChance,
} from './model.ts';
export { type NextFaultCheck, nextFaultChecks } from './next-checks.ts';
export { type RankedFault, rankFaults } from './rank-faults.ts';
export type { FaultReason } from './reasons.ts';
