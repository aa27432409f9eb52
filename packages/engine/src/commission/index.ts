export type {
  BandPart,
  CheckHints,
  CommissionCheck,
  CommissionCheckFacts,
  CommissionStage,
  CommissionUnit,
  ConfirmCheck,
  MeasureCheck,
} from './check.ts';
export { commissionChecks } from './commission-checks.ts';
export type { CommissionOptions, PlannedPasses } from './commission-input.ts';
export type {
  CommissionAirPoint,
  CommissionAirRun,
  CommissionItem,
  CommissionSource,
  CommissionSupply,
} from './commission-supply.ts';
export { type Connection, connectionSchedule } from './connection-schedule.ts';
export { type CommissionInstruments, type StatedFigure, USUAL_INSTRUMENTS } from './instruments.ts';
export { evidenceOf, judgeReading, type ReadingJudgement } from './judge-reading.ts';
export { readReading } from './read-reading.ts';
export { type CommissionReading, recordReading } from './record-reading.ts';
export { READING_UNITS } from './units.ts';
