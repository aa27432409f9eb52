import { knowledgeParts } from './knowledge.ts';
import { serveWorker } from './serve-worker.ts';

serveWorker(knowledgeParts);
