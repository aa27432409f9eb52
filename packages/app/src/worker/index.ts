export type { PlanReply, PlanRequest } from './message.ts';
export { createPlanner, type PlanWorker } from './planner.ts';
export { startWorker } from './start-worker.ts';
