import { fieldBuffers, heatParts } from './heat.ts';
import { serveWorker } from './serve-worker.ts';

serveWorker(heatParts, fieldBuffers);
