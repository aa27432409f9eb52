export type { PlanReply, PlanRequest } from './message.ts';
export { createPlanner, type PlanWorker } from './planner.ts';
export { startWorker } from './start-worker.ts';
export { linkWorker, type WorkerLink } from './worker-link.ts';
