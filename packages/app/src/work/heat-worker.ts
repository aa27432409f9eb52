import { fieldBuffers, type HeatRequest, heatParts } from './heat.ts';
import { serveWorker } from './serve-worker.ts';

serveWorker((request: HeatRequest) => heatParts(request), fieldBuffers);
