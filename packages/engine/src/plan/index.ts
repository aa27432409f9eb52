export { arcWorkOfPlan, type CycleSurroundings, sectionOfPlan } from './arc-work-of-plan.ts';
export type { Chances } from './chance.ts';
export { cleaningTime, takes, usableLength } from './effort.ts';
export type { OntoFloorChances } from './floor-after.ts';
export type { FloorShops } from './floor-shops.ts';
export { heaviestPass } from './heaviest-pass.ts';
export { planningBelief } from './law.ts';
export { type OntoFloorPlan, type OntoFloorTask, planOntoFloor } from './onto-floor.ts';
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
export { betterPlan, type PlanResult, type PlanWithin, planAlone, planJob } from './plan-job.ts';
export { drawSeamCourses } from './seam-courses.ts';
export { drawSeamPaths, stationVariance } from './seam-paths.ts';
export { drawShops, pathOf, type ShopDraws } from './shop-draws.ts';
export { type StationCut, type StationCutInput, stationCuts } from './station-cuts.ts';
export type { AfterCostFunction, GrooveLeft } from './whole-cost.ts';
export type { Work } from './work.ts';
