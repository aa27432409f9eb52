import type { PlanReply, PlanRequest } from './message.ts';
import type { WorkerLink } from './worker-link.ts';

/** The worker that plans. */
export type PlanWorker = WorkerLink<PlanRequest, PlanReply>;

/** Plans in a worker; of several requests only the newest counts. */
export interface Planner {
  readonly ask: (request: PlanRequest) => void;
  readonly close: () => void;
}

/**
 * Keeps one request under way and the newest waiting: what was asked in between is never planned, and a reply
 * that has been overtaken by a newer request is not handed on.
 */
export function createPlanner(start: () => PlanWorker, onReply: (reply: PlanReply) => void): Planner {
  let worker: PlanWorker | undefined;
  let running: PlanRequest | undefined;
  let waiting: PlanRequest | undefined;

  const next = (): void => {
    running = waiting;
    waiting = undefined;
    if (running === undefined) return;
    worker ??= started();
    worker.post(running);
  };
  const started = (): PlanWorker => {
    const fresh = start();
    fresh.onReply = (reply) => {
      if (reply.id === running?.id && waiting === undefined) onReply(reply);
      next();
    };
    fresh.onCrash = (message) => {
      const failed = running;
      worker?.end();
      worker = undefined;
      if (failed !== undefined && waiting === undefined) onReply({ id: failed.id, is: 'failure', message });
      next();
    };
    return fresh;
  };
  return {
    ask(request) {
      waiting = request;
      if (running === undefined) next();
    },
    close() {
      worker?.end();
      worker = undefined;
      running = undefined;
      waiting = undefined;
    },
  };
}
