export type {
  AirPointReport,
  AirReport,
  DrawdownReport,
  HoseChangesReport,
  PassDrawdownReport,
} from './air.ts';
export { type Advice, type Answer, type AnswerInputs, answerSchema } from './answer.ts';
export {
  type CostAnswer,
  type CostAssumptionReport,
  type CostChangeReport,
  type CostEstimate,
  type CostItem,
  type CostReport,
  type CostStep,
  costChangeSchema,
  costSchema,
  type ExtraReport,
  type NoCost,
  type RefillReport,
  type WayReport,
} from './cost.ts';
export type {
  ElectricPoint,
  ElectricReport,
  JointReport,
  LeadReport,
  LossReport,
  SenseReport,
  SourceReport,
  TemperatureCurve,
} from './electric.ts';
export {
  type CrewNoiseReport,
  type FieldReport,
  type FireZoneReport,
  type FumeReport,
  type HazardBreach,
  type HazardFigure,
  type HazardRange,
  type HazardReport,
  type HazardRow,
  type HazardRule,
  type HazardSection,
  type HazardSetting,
  hazardSchema,
  type MixtureReport,
  type NoiseTaskReport,
  type SubstanceLimit,
  type SubstanceReport,
} from './hazard.ts';
export {
  type CoolingFormula,
  type HardnessFormula,
  type HardnessReport,
  type HeatAssumption,
  type HeatBalance,
  type HeatEnds,
  type HeatPass,
  type HeatRange,
  type HeatReport,
  heatSchema,
  type PreheatMethod,
  type PreheatPart,
  type PreheatReport,
  type SkinReport,
} from './heat.ts';
export { type KnowledgeReport, knowledgeReportSchema } from './knowledge.ts';
export type {
  AreaReport,
  BayReport,
  PickReport,
  PlaceReport,
  PointReport,
  RouteReport,
} from './place.ts';
export {
  type Band,
  type ElectrodeChange,
  type GaugeRow,
  type GaugeStop,
  type Plan,
  type PlanPass,
  planSchema,
  type SectionBand,
  type Spread,
  statePlan,
  type Tryout,
} from './plan.ts';
export { deepenText, planTables, tryoutText } from './plan-tables.ts';
export { bandSchema, spreadSchema } from './prediction.ts';
export { RESULT_NAMES, RESULT_SCHEMAS, type ResultName, resultJsonSchema } from './result-schema.ts';
export { sentenceSchema } from './sentence.ts';
export {
  type KitReport,
  type KitTime,
  type SupplyReport,
  type SupplySetting,
  supplySchema,
} from './supply.ts';
