import { planParts } from './plan.ts';
import { serveWorker } from './serve-worker.ts';

serveWorker(planParts);
