import { serveWorker } from './serve-worker.ts';
import { surveyParts } from './survey.ts';

serveWorker(surveyParts);
