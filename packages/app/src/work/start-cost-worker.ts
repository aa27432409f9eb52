import type { CostReply, CostRequest } from './cost-message.ts';
import { linkWorker, type WorkerLink } from './worker-link.ts';

/** The worker that reckons time and money. */
export type CostWorker = WorkerLink<CostRequest, CostReply>;

/** Starts the browser's worker that reckons time and money. */
export function startCostWorker(): CostWorker {
  return linkWorker(
    new Worker(new URL('./cost-worker.ts', import.meta.url), { type: 'module', name: 'cost' }),
    'cost reckoner',
  );
}
