import type { PlanWorker } from './planner.ts';
import { linkWorker } from './worker-link.ts';

/** Starts the browser's worker that plans. */
export function startWorker(): PlanWorker {
  return linkWorker(
    new Worker(new URL('./planner-worker.ts', import.meta.url), { type: 'module', name: 'planner' }),
    'planner',
  );
}
