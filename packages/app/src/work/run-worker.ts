import { runParts, traceBuffers } from './run.ts';
import { serveWorker } from './serve-worker.ts';

serveWorker(runParts, traceBuffers);
