export {
  type AirPointReport,
  type AirReport,
  type DrawdownReport,
  type HoseChangesReport,
  type PassDrawdownReport,
  stateAir,
} from './air.ts';
export {
  type Advice,
  type Answer,
  type AnswerBasis,
  type AnswerInputs,
  answerSchema,
  writtenAnswer,
} from './answer.ts';
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
  stateCost,
  type WayReport,
} from './cost.ts';
export {
  type ElectricPoint,
  type ElectricReport,
  type JointReport,
  type LeadReport,
  type LossReport,
  type SenseReport,
  type SourceReport,
  stateElectric,
  type TemperatureCurve,
} from './electric.ts';
export { type GaugeReport, gaugeReportSchema, stateBudget, stateGauge, stateGaugeCheck } from './gauge.ts';
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
  stateHazard,
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
  stateHeat,
} from './heat.ts';
export {
  type KnowledgeReport,
  knowledgeReportSchema,
  type NextTrialReport,
  nextTrialSchema,
} from './knowledge.ts';
export {
  type AreaReport,
  type BayReport,
  type PickReport,
  type PlaceReport,
  type PointReport,
  type RouteReport,
  statePlace,
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
export { planTables } from './plan-tables.ts';
export { bandSchema, spreadSchema } from './prediction.ts';
export { type ReadingReport, readingSchema, stateReading } from './reading.ts';
export { RESULT_NAMES, RESULT_SCHEMAS, type ResultName, resultJsonSchema } from './result-schema.ts';
export {
  type RemainingPasses,
  type RunReport,
  type RunStatement,
  runSchema,
  stateRun,
  type WantedDepth,
} from './run.ts';
export {
  type KitReport,
  type KitTimeReport,
  type SettingOutcome,
  type SupplyOutcome,
  type SupplyReport,
  type SupplySetting,
  stateSupply,
  supplySchema,
} from './supply.ts';
export {
  type RecutPlan,
  type SurveyReport,
  type SurveySeam,
  stateSeam,
  stateSection,
  stateSurveyFile,
  surveySchema,
} from './survey.ts';
