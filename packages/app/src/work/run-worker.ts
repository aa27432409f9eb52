import { type RunRequest, runParts, traceBuffers } from './run.ts';
import { serveWorker } from './serve-worker.ts';

serveWorker((request: RunRequest) => runParts(request), traceBuffers);
