export { type AfterCost, afterCostOf } from './after-cost.ts';
export { type Refill, refillOf } from './after-work.ts';
export type { ArcWork, Scatter, Typical } from './arc-work.ts';
export { type Cycle, type CycleShare, type CycleTotals, simulateCycle, simulateTotals } from './cycle.ts';
export { COST_PARTS, type CostPart, CYCLE_STEPS, type CycleStep, type StepWork } from './cycle-step.ts';
export { type Estimate, estimateOf } from './estimate.ts';
export { type ExtraMetal, extraMetal } from './extra-metal.ts';
export { type GrooveSection, groundArea, plainGrooveArea } from './groove-section.ts';
export {
  breakEvenLength,
  type ComparedWay,
  compareWays,
  OTHER_WAYS,
  type OtherWay,
  plannedWay,
  type WayCost,
  type WayTaken,
} from './other-way.ts';
export { type CostAssumption, type CostPractice, costPracticeOf, refillTitle } from './practice.ts';
export { simulate } from './simulate.ts';
export { type SkinOff, skinOff } from './skin.ts';
export {
  type CostKnown,
  type CostOutcome,
  type WayOutcome,
  wholeCost,
} from './whole-cost.ts';
export { triangular } from './work-factors.ts';
