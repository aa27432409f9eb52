export type { CostReply } from './cost-message.ts';
export type { HeatQuality, HeatReply } from './heat-message.ts';
export { createHeatSolver, type HeatWorker } from './heat-solver.ts';
export type { PlanReply, PlanRequest } from './message.ts';
export { createPlanner, type PlanWorker } from './planner.ts';
export { type CostWorker, startCostWorker } from './start-cost-worker.ts';
export { startHeatWorker } from './start-heat-worker.ts';
export { startWorker } from './start-worker.ts';
