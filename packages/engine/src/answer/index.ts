export { answerJob, type JobQuestion } from './answer.ts';
export { tryCostChanges } from './answer-cost-changes.ts';
export { answerHeat, type HeatQuestion } from './answer-heat.ts';
export { answerKnowledge } from './answer-knowledge.ts';
export { coolingForCost } from './cooling-for-cost.ts';
export type { CostChangeId } from './cost-change.ts';
export type { HeatAnswer } from './heat-answer.ts';
export { answerCost, type CostOptions } from './report-cost.ts';
export { answerHazard } from './report-hazard.ts';
