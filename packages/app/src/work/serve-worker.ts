import { config } from 'zod';
import type { WorkCommand, WorkJob } from './protocol.ts';
import { serve } from './serve.ts';

/** Serves a job in the worker that this runs in; memory named by `transfer` is handed over instead of copied. */
export function serveWorker<Request, Part>(
  job: WorkJob<Request, Part>,
  transfer: (part: Part) => ArrayBuffer[] = () => [],
): void {
  // the page's policy forbids code made from text
  config({ jitless: true });
  const take = serve(job, {
    reply: (reply) => self.postMessage(reply, { transfer: reply.is === 'part' ? transfer(reply.part) : [] }),
    pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
    now: () => performance.now(),
  });
  self.addEventListener('message', (event: MessageEvent<WorkCommand<Request>>) => {
    void take(event.data);
  });
}
