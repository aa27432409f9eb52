export { type PlanResult, planJob } from './plan-job.ts';
export type {
  Band,
  Binding,
  ElectrodeChange,
  GaugeRow,
  GaugeStop,
  Plan,
  PlanPass,
  Refusal,
  SectionBand,
  Spread,
  StationsChoice,
} from './result.ts';
export { runPlan } from './run-plan.ts';
export type { Setup } from './setup.ts';
export { drawShops } from './shop-draws.ts';
export type { AfterCostFunction, GrooveLeft } from './whole-cost.ts';
