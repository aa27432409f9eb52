export {
  type BandPart,
  type CheckHints,
  type CommissionCheck,
  type CommissionCheckFacts,
  type CommissionStage,
  type CommissionUnit,
  type ConfirmCheck,
  commissionCheckSchema,
  type MeasureCheck,
} from './check.ts';
export { commissionChecks, USUAL_STICK_OUT } from './commission-checks.ts';
export type { CommissionOptions, PlannedPasses } from './commission-input.ts';
export type {
  CommissionAirPoint,
  CommissionAirRun,
  CommissionItem,
  CommissionSource,
  CommissionSupply,
  PressureSpan,
} from './commission-supply.ts';
export { type Connection, connectionSchedule, connectionSchema } from './connection-schedule.ts';
export { type CommissionInstruments, type StatedFigure, USUAL_INSTRUMENTS } from './instruments.ts';
export { evidenceOf, judgeReading, type ReadingJudgement } from './judge-reading.ts';
export { readReading } from './read-reading.ts';
export { bandEnd, readingAmount } from './reading-amount.ts';
export { type RehearsedReading, rehearseReadings } from './rehearse-readings.ts';
export {
  type CommissionRound,
  commissionRoundSchema,
  RIG_CHANGES,
  type RigChange,
  ROUND_DEPTHS,
  type RoundDepth,
  roundOf,
} from './round.ts';
export { commissionSupplyOf } from './supply-of-kit.ts';
export { type Turning, turningOf } from './turning.ts';
export { READING_KINDS } from './units.ts';
