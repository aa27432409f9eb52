export { type AfterCost, afterCostOf } from './after-cost.ts';
export { type Refill, refillOf } from './after-work.ts';
export { type GrooveSection, groundArea, plainGrooveArea } from './groove-section.ts';
export { type CostAssumption, type CostPractice, costPracticeOf } from './practice.ts';
export { triangular } from './work-factors.ts';
