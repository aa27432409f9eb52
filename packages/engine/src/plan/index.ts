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
export { runPlan, type Setup } from './run-plan.ts';
export { drawShops } from './shop-draws.ts';
