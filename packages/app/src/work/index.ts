export { createClient } from './client.ts';
export type { CostPart } from './cost.ts';
export type { HeatPart, HeatQuality, HeatRequest, HeatWorker } from './heat.ts';
export type { KnowledgePart } from './knowledge.ts';
export type { PlanRequest, PlanWorker } from './plan.ts';
export type { WorkEvent, WorkerLink, WorkReply } from './protocol.ts';
export type { RunPart, RunSource, RunWorker, UnreadColumn } from './run.ts';
export {
  startCostWorker,
  startHeatWorker,
  startKnowledgeWorker,
  startPlanWorker,
  startRunWorker,
  startSurveyWorker,
} from './start-worker.ts';
export type { MeasuredFile, SurveyPart, SurveyWorker, UnreadFile } from './survey.ts';
export { useClient } from './use-client.ts';
