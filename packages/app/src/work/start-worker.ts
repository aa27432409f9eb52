import type { CostWorker } from './cost.ts';
import type { HeatWorker } from './heat.ts';
import type { KnowledgeWorker } from './knowledge.ts';
import type { PlanWorker } from './plan.ts';
import type { WorkerLink, WorkReply } from './protocol.ts';
import type { RunWorker } from './run.ts';
import type { SurveyWorker } from './survey.ts';

/** Starts the browser's worker that plans. */
export function startPlanWorker(): PlanWorker {
  return linkWorker(
    new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module', name: 'planner' }),
    'planner',
  );
}

/** Starts the browser's worker of time and money. */
export function startCostWorker(): CostWorker {
  return linkWorker(
    new Worker(new URL('./cost-worker.ts', import.meta.url), { type: 'module', name: 'cost' }),
    'cost calculation',
  );
}

/** Starts the browser's worker that solves the heat. */
export function startHeatWorker(): HeatWorker {
  return linkWorker(
    new Worker(new URL('./heat-worker.ts', import.meta.url), { type: 'module', name: 'heat' }),
    'heat solver',
  );
}

/** Starts the browser's worker that tells what a shop knows. */
export function startKnowledgeWorker(): KnowledgeWorker {
  return linkWorker(
    new Worker(new URL('./knowledge-worker.ts', import.meta.url), { type: 'module', name: 'knowledge' }),
    'knowledge worker',
  );
}

/** Starts the browser's worker that reviews logs. */
export function startRunWorker(): RunWorker {
  return linkWorker(
    new Worker(new URL('./run-worker.ts', import.meta.url), { type: 'module', name: 'run' }),
    'review of the log',
  );
}

/** Starts the browser's worker that measures grooves. */
export function startSurveyWorker(): SurveyWorker {
  return linkWorker(
    new Worker(new URL('./survey-worker.ts', import.meta.url), { type: 'module', name: 'survey' }),
    'survey of the groove',
  );
}

/** Links the page to a worker of the browser; its name is for the words of a crash. */
function linkWorker<Request, Part>(worker: Worker, name: string): WorkerLink<Request, Part> {
  const link: WorkerLink<Request, Part> = {
    onReply: () => {},
    onCrash: () => {},
    post: (command) => worker.postMessage(command),
    end: () => worker.terminate(),
  };
  worker.addEventListener('message', (event: MessageEvent<WorkReply<Part>>) => link.onReply(event.data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    link.onCrash(event.message || `the ${name} could not be started`);
  });
  return link;
}
