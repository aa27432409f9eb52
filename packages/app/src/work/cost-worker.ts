import { config } from 'zod';
import type { CostRequest } from './cost-message.ts';
import { costRun } from './cost-run.ts';

// the page's policy forbids code made from text
config({ jitless: true });

const run = costRun({
  reply: (reply) => self.postMessage(reply),
  pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
});

self.addEventListener('message', (event: MessageEvent<CostRequest>) => {
  void run(event.data);
});
