export type {
  AirPointReport,
  AirReport,
  DrawdownReport,
  HoseChangesReport,
  PassDrawdownReport,
} from './air-report.ts';
export { type Advice, type Answer, type AnswerInputs, answerJob, type JobQuestion } from './answer.ts';
export { type CostChangeReport, tryCostChanges } from './answer-cost-changes.ts';
export { answerHeat, type HeatQuestion } from './answer-heat.ts';
export { answerKnowledge } from './answer-knowledge.ts';
export { coolingForCost } from './cooling-for-cost.ts';
export type { CostChangeId } from './cost-change.ts';
export type {
  CostAnswer,
  CostAssumptionReport,
  CostEstimate,
  CostItem,
  CostReport,
  CostStep,
  ExtraReport,
  NoCost,
  RefillReport,
  WayReport,
} from './cost-report.ts';
export type {
  ElectricPoint,
  ElectricReport,
  JointReport,
  LeadReport,
  LossReport,
  SenseReport,
  SourceReport,
  TemperatureCurve,
} from './electric-report.ts';
export type {
  CrewNoiseReport,
  FieldReport,
  FireZoneReport,
  FumeReport,
  HazardBreach,
  HazardFigure,
  HazardRange,
  HazardReport,
  HazardRow,
  HazardRule,
  HazardSection,
  HazardSetting,
  MixtureReport,
  NoiseTaskReport,
  SubstanceLimit,
  SubstanceReport,
} from './hazard-report.ts';
export type {
  CoolingFormula,
  HardnessFormula,
  HardnessReport,
  HeatAnswer,
  HeatAssumption,
  HeatBalance,
  HeatEnds,
  HeatPass,
  HeatRange,
  HeatReport,
  PreheatMethod,
  PreheatPart,
  PreheatReport,
  SkinReport,
} from './heat-report.ts';
export type {
  AreaReport,
  BayReport,
  PickReport,
  PlaceReport,
  PointReport,
  RouteReport,
} from './place-report.ts';
export { answerCost, type CostOptions } from './report-cost.ts';
export { answerHazard } from './report-hazard.ts';
export type { KitReport, KitTime, SupplyReport, SupplySetting } from './supply-report.ts';
