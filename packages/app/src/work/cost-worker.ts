import { costParts } from './cost.ts';
import { serveWorker } from './serve-worker.ts';

serveWorker(costParts);
