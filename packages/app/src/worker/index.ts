export type { PlanReply, PlanRequest } from './message.ts';
export { createPlanner, type Planner, type PlanWorker } from './planner.ts';
export { startWorker } from './start-worker.ts';
