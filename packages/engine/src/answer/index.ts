export type { AirPointReport, AirReport, DrawdownReport, HoseChangesReport } from './air-report.ts';
export { type Advice, type Answer, type AnswerInputs, answerJob } from './answer.ts';
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
  CoolingFormula,
  HardnessFormula,
  HardnessReport,
  HeatAnswer,
  HeatAssumption,
  HeatBalance,
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
export type { KitReport, KitTime, SupplyReport, SupplySetting } from './supply-report.ts';
