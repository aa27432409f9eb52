import type { HeatCommand, HeatReply, HeatRequest } from './heat-message.ts';
import type { WorkerLink } from './worker-link.ts';

/** The worker that solves the heat. */
export type HeatWorker = WorkerLink<HeatCommand, HeatReply>;

/** Solves in a worker; of several requests only the newest counts. */
export interface HeatSolver {
  readonly ask: (request: Omit<HeatRequest, 'is'>) => void;
  /** Gives up what is under way. */
  readonly stop: () => void;
  readonly close: () => void;
}

/** Hands on what comes of the newest request alone; after a crash the next request starts another worker. */
export function createHeatSolver(start: () => HeatWorker, onReply: (reply: HeatReply) => void): HeatSolver {
  let worker: HeatWorker | undefined;
  let newest: number | undefined;
  const started = (): HeatWorker => {
    const fresh = start();
    fresh.onReply = (reply) => {
      if (reply.id === newest) onReply(reply);
    };
    fresh.onCrash = (message) => {
      fresh.end();
      if (worker === fresh) worker = undefined;
      if (newest !== undefined) onReply({ id: newest, is: 'failure', message });
    };
    return fresh;
  };
  return {
    ask(request) {
      newest = request.id;
      worker ??= started();
      worker.post({ is: 'solve', ...request });
    },
    stop() {
      newest = undefined;
      worker?.post({ is: 'stop' });
    },
    close() {
      newest = undefined;
      worker?.end();
      worker = undefined;
    },
  };
}
