export { arcWorkOfPlan, type CycleSurroundings, sectionOfPlan } from './arc-work-of-plan.ts';
export type { Chances } from './chance.ts';
export { usableLength } from './effort.ts';
export { heaviestPass } from './heaviest-pass.ts';
export type {
  Binding,
  ChangeOutcome,
  Doubt,
  Expectation,
  MeasuringWorth,
  PassOutcome,
  Percentiles,
  PlanOutcome,
  Refusal,
  RowOutcome,
  SectionOutcome,
  StopOutcome,
  TryoutOutcome,
  WayName,
} from './outcome.ts';
export { type PlanResult, type PlanWithin, planAlone, planJob } from './plan-job.ts';
export { drawSeamPaths } from './seam-paths.ts';
export { drawShops } from './shop-draws.ts';
export { type StationCut, type StationCutInput, stationCuts } from './station-cuts.ts';
export type { AfterCostFunction, GrooveLeft } from './whole-cost.ts';
export type { Work } from './work.ts';
