export { type FloorMap, type UnrolledCloud, type UnrollOptions, unrollCloud } from './cloud/unroll-cloud.ts';
export type { Gauge } from './gauge/gauge-schema.ts';
export {
  type GaugeCheck,
  type GaugeStudy,
  gaugeCheck,
  gaugeStudy,
  type NestedStudy,
  nestedStudy,
  type StudyDay,
  type StudyReading,
} from './gauge/gauge-study.ts';
export { type Inspection, type InspectionRisk, inspectionRisk } from './gauge/inspection-risk.ts';
export {
  type CheckedGauge,
  checkOf,
  type GaugeOutcome,
  judgeGauge,
} from './gauge/judge-gauge.ts';
export {
  type DrawnResult,
  type Propagated,
  propagate,
  propagateByDraws,
  type UncertainInput,
} from './gauge/propagate.ts';
export {
  GAUGE_TEXT_MOST,
  gaugeFields,
  gaugeJsonSchema,
  type ReadGauge,
  readGauge,
} from './gauge/read-gauge.ts';
export {
  type BudgetInput,
  type BudgetLine,
  type ReadingBudget,
  readingBudget,
} from './gauge/reading-budget.ts';
export type { CloudPoints } from './read/read-ply.ts';
export {
  type GivenSurvey,
  type HandReading,
  isReadingsFile,
  type LengthUnit,
  readSurveyFile,
  type SurveyChoice,
  type SurveyFile,
} from './read/read-survey-file.ts';
export { judgeStation, type Station, type StationJudgement } from './record/judge-station.ts';
export { READINGS_TEXT_MOST, type ReadReadings, readReadings } from './record/read-readings.ts';
export { readingsDifference } from './record/readings-difference.ts';
export { readingsFields } from './record/readings-fields.ts';
export { readingsJsonSchema } from './record/readings-json-schema.ts';
export type { Readings } from './record/readings-schema.ts';
export { type SetAsideReason, slipOf } from './seam/check-reading.ts';
export { conditionGaussian, type GaussianPosterior, type GaussianPrior } from './seam/condition-gaussian.ts';
export { type CutAgain, cutOf, fusePieces } from './seam/fuse-pieces.ts';
export { fuseSeam, type SeamPosterior } from './seam/fuse-seam.ts';
export {
  type DepthBand,
  type FaultSpot,
  judgeSeam,
  RULE as DECISION_RULE,
  type SeamDepth,
  type SeamVerdict,
  type Stretch,
  spotFaults,
} from './seam/judge-seam.ts';
export {
  type NextStation,
  type NextStations,
  nextStations,
  type SeamStakes,
  withFaultEnds,
} from './seam/next-station.ts';
export {
  hasUnseenEnds,
  plateLeftOf,
  type RecutPass,
  type RepairLaw,
  recutOf,
  type SeamRepair,
} from './seam/recut.ts';
export type {
  CurvePlace,
  JudgedReading,
  NotTaught,
  RecutSetting,
  SeamGauged,
  SeamOutcome,
  SeamPast,
  SeamTeaching,
  SeamWidth,
  StretchRecut,
} from './seam/seam-outcome.ts';
export type { SeamReading, SeamSpread } from './seam/seam-states.ts';
export { type SeamSpreadNode, spreadAfter } from './seam/spread-belief.ts';
export { type Circle, type CircleFit, geometricCircle, taubinCircle } from './section/circle.ts';
export {
  measureSection,
  type Section,
  type SectionOptions,
  type SectionOutline,
  type SectionPoints,
  type WildPoint,
} from './section/measure-section.ts';
export { gaussianFilter } from './section/profile-filter.ts';
export type { Measured } from './section/quantity.ts';
export type { SectionScan } from './section/scan.ts';
