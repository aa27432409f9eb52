import type { HeatWorker } from './heat-solver.ts';
import { linkWorker } from './worker-link.ts';

/** Starts the browser's worker that solves the heat. */
export function startHeatWorker(): HeatWorker {
  return linkWorker(
    new Worker(new URL('./heat-worker.ts', import.meta.url), { type: 'module', name: 'heat' }),
    'heat solver',
  );
}
