import type { PlanReply } from './message.ts';
import type { PlanWorker } from './planner.ts';

/** Starts the browser's worker that plans. */
export function startWorker(): PlanWorker {
  const worker = new Worker(new URL('./planner-worker.ts', import.meta.url), {
    type: 'module',
    name: 'planner',
  });
  const started: PlanWorker = {
    onReply: () => {},
    onCrash: () => {},
    post: (request) => worker.postMessage(request),
    end: () => worker.terminate(),
  };
  worker.addEventListener('message', (event: MessageEvent<PlanReply>) => started.onReply(event.data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    started.onCrash(event.message || 'the planner could not be started');
  });
  return started;
}
